package tunside.dosing;

import java.util.ArrayList;
import java.util.List;

/**
 * What went in so far: each reagent once, with all of it.
 *
 * @param portions in the order in which the reagents first went in
 */
record Given(List<Portion> portions) {
    static final Given NOTHING = new Given(List.of());

    /**
     * An amount of a reagent.
     *
     * @param protonsMeqPerGram as in {@link Reagent}
     * @param grams of it
     */
    record Portion(PhCurve protonsMeqPerGram, double grams) {}

    Given {
        portions = List.copyOf(portions);
    }

    /** Whether nothing went in. */
    boolean isNothing() {
        return portions.isEmpty();
    }

    /** The same and more of a reagent. */
    Given plus(Reagent reagent, double grams) {
        if (grams == 0) {
            return this;
        }
        PhCurve protons = reagent.protonsMeqPerGram();
        List<Portion> more = new ArrayList<>();
        double all = grams;
        int at = portions.size();
        for (Portion portion : portions) {
            if (portion.protonsMeqPerGram.equals(protons)) {
                all += portion.grams;
                at = more.size();
            } else {
                more.add(portion);
            }
        }
        more.add(at, new Portion(protons, all));
        return new Given(more);
    }

    /** Protons that all of it has given where the liquid is at a pH, mEq. */
    double meq(double ph) {
        double sum = 0;
        for (int i = 0; i < portions.size(); i++) {
            Portion portion = portions.get(i);
            sum += portion.grams * portion.protonsMeqPerGram.at(ph);
        }
        return sum;
    }

    /** What that changes by per pH. */
    double slope(double ph) {
        double sum = 0;
        for (int i = 0; i < portions.size(); i++) {
            Portion portion = portions.get(i);
            sum += portion.grams * portion.protonsMeqPerGram.slope(ph);
        }
        return sum;
    }
}
