package tunside.mash;

import java.util.Locale;

/**
 * A part of a mash that takes up or gives protons.
 *
 * @param kind what sort of part
 * @param subject its name, such as a malt class; empty for the liquor
 * @param formula protons as a function of the inputs and the pH
 */
record MashComponent(Kind kind, String subject, Formula formula) {

    /** Sorts of component. */
    enum Kind {
        MALT,
        LIQUOR,
        CALCIUM,
        MAGNESIUM,
        ACID,
        SALT;

        /** As answers write it. */
        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Whether it is a malt. */
    boolean isMalt() {
        return kind == Kind.MALT;
    }

    /** Protons taken up by a component. */
    @FunctionalInterface
    interface Formula {
        /**
         * mEq, falling with the pH.
         *
         * @param inputs values in the order of the equation's inputs
         */
        double uptakeMeq(double[] inputs, double ph);
    }
}
