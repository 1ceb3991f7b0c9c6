package tunside.mash.plan;

import tunside.chemistry.Acid;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Salt;
import tunside.mash.AcidAddition;
import tunside.mash.Estimate;
import tunside.mash.Malt;
import tunside.mash.SaltAddition;
import tunside.quantity.Mass;
import tunside.quantity.Volume;
import tunside.water.Water;

/** Something at hand, counted in a measure of its own: acids in mL, powders and salts in g, malt in kg, water in L. */
public sealed interface PlanSupply {
    /** What a supply does. */
    enum Role {
        /** Lowers the pH: an acid or acidulated malt. */
        ACID,
        /** Raises the pH. */
        BASE,
        /** Brings ions. */
        SALT,
        /** Takes the place of a part of the liquor. */
        WATER
    }

    /** JSON Pointer to it, relative to the question. */
    String pointer();

    /** As requests name it. */
    String id();

    /** In words. */
    String name();

    /** What it does. */
    Role role();

    /** Smallest amount that can be measured, above 0, in its measure. */
    double step();

    /** Most that may be used, not negative, in its measure. */
    double most();

    /** Substance in one measure, mmol: the acid that acts, or the salt; 0 for water. */
    double millimolesPerUnit();

    /** Code of its limit, as {@code checks-plan.csv} lists it. */
    String limitCode();

    /** JSON Pointer to its limit, relative to the question. */
    default String limitPointer() {
        return pointer() + (role() == Role.WATER || this instanceof OfMalt ? "/mostPercent" : "/most");
    }

    /** JSON Pointer to its step, relative to the question. */
    String stepPointer();

    /** How much one measure counts among the amounts of a plan, mmol; of a base its alkalinity, mEq. */
    default double countedPerUnit() {
        return millimolesPerUnit();
    }

    /** The same with another limit. */
    PlanSupply withMost(double most);

    /** The same with another step. */
    PlanSupply withStep(double step);

    /** Most whole steps within the limit. */
    default int mostSteps() {
        return (int) Math.min(1_000_000_000, Math.floor(most() / step() + 1e-9));
    }

    private static void require(String name, double step, double most) {
        if (!(step > 0 && step < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("step of %s (%s) must be above 0".formatted(name, step));
        }
        if (!(most >= 0 && most < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("most of %s (%s) must be finite and not negative".formatted(name, most));
        }
    }

    /**
     * An acid at the strength at which it is added.
     *
     * @param product what; in mL at 20 degC, a powder in g
     */
    record OfAcid(String pointer, AcidProduct product, double step, double most) implements PlanSupply {
        public OfAcid {
            require(product.acid().id(), step, most);
        }

        @Override
        public String limitCode() {
            return product.solid() ? "plan.amount-mass" : "plan.amount-volume";
        }

        @Override
        public String stepPointer() {
            return product.solid() ? "/steps/scale" : "/steps/syringe";
        }

        @Override
        public String id() {
            return product.acid().id();
        }

        @Override
        public String name() {
            return product.acid().name();
        }

        @Override
        public Role role() {
            return Role.ACID;
        }

        @Override
        public double millimolesPerUnit() {
            return addition(1).millimoles().value();
        }

        @Override
        public OfAcid withMost(double other) {
            return new OfAcid(pointer, product, step, other);
        }

        @Override
        public OfAcid withStep(double other) {
            return new OfAcid(pointer, product, other, most);
        }

        /** So much of it in a mash. */
        public AcidAddition addition(double amount) {
            return product.solid()
                    ? AcidAddition.of(product, new Mass(amount / 1000))
                    : AcidAddition.of(product, new Volume(amount / 1000));
        }

        /** Mass of an amount, g. */
        public double grams(double amount) {
            return product.solid() ? amount : amount * product.densityGPerMl();
        }
    }

    /**
     * Acidulated malt that comes on top of the grist.
     *
     * @param malt of a class that carries lactic acid, not itself measured; in kg
     */
    record OfMalt(String pointer, Malt malt, double step, double most) implements PlanSupply {
        public OfMalt {
            require(malt.label(), step, most);
            if (malt.countedLacticAcidPercent().isEmpty()) {
                throw new IllegalArgumentException("%s carries no lactic acid of its own".formatted(malt.label()));
            }
        }

        /**
         * Most malt that keeps a share of the whole grist.
         *
         * @param gristKilograms without it
         * @param acidulatedKilograms of these that are acidulated malt already
         * @param mostShare of the whole, 0 to below 1
         */
        public static double mostKilograms(double gristKilograms, double acidulatedKilograms, double mostShare) {
            return Math.max(0, (mostShare * gristKilograms - acidulatedKilograms) / (1 - mostShare));
        }

        @Override
        public String limitCode() {
            return "plan.acidulated-share";
        }

        @Override
        public String stepPointer() {
            return "/steps/maltScale";
        }

        @Override
        public String id() {
            return malt.maltClass().id();
        }

        @Override
        public String name() {
            return malt.maltClass().name();
        }

        @Override
        public Role role() {
            return Role.ACID;
        }

        @Override
        public double millimolesPerUnit() {
            Acid lactic = Acids.get("lactic");
            double percent =
                    malt.countedLacticAcidPercent().map(Estimate::value).orElseThrow();
            return 10_000 * percent / lactic.molarMassGPerMol();
        }

        @Override
        public OfMalt withMost(double other) {
            return new OfMalt(pointer, malt, step, other);
        }

        @Override
        public OfMalt withStep(double other) {
            return new OfMalt(pointer, malt, other, most);
        }
    }

    /**
     * A salt or base.
     *
     * @param salt what, in g; one that brings alkalinity is a base
     */
    record OfSalt(String pointer, Salt salt, double step, double most) implements PlanSupply {
        private static final double NEUTRAL_MEQ_PER_GRAM = 1e-6;

        public OfSalt {
            require(salt.id(), step, most);
        }

        /** Whether a salt brings alkalinity. */
        public static boolean isBase(Salt salt) {
            return salt.alkalinityMeqPerGram() > NEUTRAL_MEQ_PER_GRAM;
        }

        @Override
        public String limitCode() {
            return "plan.amount-mass";
        }

        @Override
        public String stepPointer() {
            return "/steps/scale";
        }

        @Override
        public String id() {
            return salt.id();
        }

        @Override
        public String name() {
            return salt.name();
        }

        @Override
        public Role role() {
            return isBase(salt) ? Role.BASE : Role.SALT;
        }

        @Override
        public double millimolesPerUnit() {
            return 1000 / salt.molarMassGPerMol();
        }

        @Override
        public double countedPerUnit() {
            return role() == Role.BASE ? salt.alkalinityMeqPerGram() : millimolesPerUnit();
        }

        @Override
        public OfSalt withMost(double other) {
            return new OfSalt(pointer, salt, step, other);
        }

        @Override
        public OfSalt withStep(double other) {
            return new OfSalt(pointer, salt, other, most);
        }

        /** So much of it in a mash. */
        public SaltAddition addition(double grams) {
            return new SaltAddition(salt, new Mass(grams / 1000));
        }
    }

    /**
     * Water that takes the place of a part of the liquor.
     *
     * @param water what, in L
     */
    record OfWater(String pointer, Water water, double step, double most) implements PlanSupply {
        public OfWater {
            require("diluting water", step, most);
        }

        @Override
        public String limitCode() {
            return "plan.dilution-share";
        }

        @Override
        public String stepPointer() {
            return "/steps/jug";
        }

        @Override
        public String id() {
            return "diluting-water";
        }

        @Override
        public String name() {
            return "diluting water";
        }

        @Override
        public Role role() {
            return Role.WATER;
        }

        @Override
        public double millimolesPerUnit() {
            return 0;
        }

        @Override
        public OfWater withMost(double other) {
            return new OfWater(pointer, water, step, other);
        }

        @Override
        public OfWater withStep(double other) {
            return new OfWater(pointer, water, other, most);
        }
    }
}
