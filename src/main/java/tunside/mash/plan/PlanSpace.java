package tunside.mash.plan;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tunside.chemistry.Acid;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.mash.AcidAddition;
import tunside.mash.Addition;
import tunside.mash.DissolvedAmount;
import tunside.mash.Mash;
import tunside.mash.MashPrediction;
import tunside.mash.SaltAddition;

/**
 * All plans that a question allows, and what each is worth.
 *
 * @param question whose
 * @param protons its balance
 * @param wants ends of the ranges of ions, which may be passed at a price
 * @param lactate what is never passed
 * @param most of each supply that has an effect within its limit, in its measure
 * @param weights what a measure of each supply adds to {@link PlanScore#amount}
 * @param buffering in mEq per pH, by which protons too many or too few at the low end, the target and the high end of the
 *     range are turned into pH where a plan is relaxed
 */
record PlanSpace(
        PlanQuestion question,
        ProtonTable protons,
        List<PlanRow> wants,
        PlanRow lactate,
        double[] most,
        double[] weights,
        double[] buffering) {
    /** A distance from which the buffering between two pH can be told. */
    private static final double TELLING_PH = 0.01;

    private static final double MMOL_PER_L = 10;
    /** A limit below this counts as this: a range that ends at 0 mg/L is missed by degrees too. */
    private static final double SMALLEST_MG_PER_L = 10;

    private static final double SMALLEST_MEQ_PER_L = 0.2;
    /** Chloride missing or too much for a ratio counts in multiples of this. */
    private static final double RATIO_MG_PER_L = 50;

    private static final double LACTATE_ROUNDING = 1e-9;

    /** Whole steps of a supply up to the most of it. */
    long mostSteps(int supply) {
        return Math.round(most[supply] / question.supplies().get(supply).step());
    }

    /**
     * Reads a question.
     *
     * @param before its mash without a plan, predicted
     */
    static PlanSpace of(PlanQuestion question, MashPrediction before) {
        return new Draft(question, before).space();
    }

    private static double[] pivots(PhAim aim) {
        return new double[] {aim.lowPh(), aim.targetPh(), aim.highPh()};
    }

    private static double[] buffering(ProtonTable protons, PhAim aim) {
        return Arrays.stream(pivots(aim)).map(protons::baseBuffering).toArray();
    }

    /** The same with the buffering between the range and where a plan lands. */
    PlanSpace around(double[] amounts) {
        double ph = protons.ph(amounts);
        double[] pivots = pivots(question.aim());
        double[] secants = buffering.clone();
        for (int i = 0; i < secants.length; i++) {
            double distance = ph - pivots[i];
            if (Math.abs(distance) >= TELLING_PH) {
                secants[i] = protons.meq(amounts, pivots[i]) / distance;
            }
        }
        return new PlanSpace(question, protons, wants, lactate, most, weights, secants);
    }

    /** How many supplies there are. */
    int size() {
        return most.length;
    }

    /** The same question with other limits of supplies; the balance is kept. */
    PlanSpace withMost(double[] other) {
        return new PlanSpace(question, protons, wants, lactate, other, weights, buffering);
    }

    /** The same with another limit of lactate. */
    PlanSpace withLactate(PlanRow other) {
        return new PlanSpace(question, protons, wants, other, most, weights, buffering);
    }

    /** The same with other ends of ranges. */
    PlanSpace withWants(List<PlanRow> others) {
        return new PlanSpace(question, protons, others, lactate, most, weights, buffering);
    }

    /** The same with another aim. */
    PlanSpace withAim(PhAim aim) {
        PlanQuestion changed = new PlanQuestion(
                question.mash(),
                question.water(),
                aim,
                question.supplies(),
                question.wants(),
                question.mostLactateMgPerL());
        return new PlanSpace(changed, protons, wants, lactate, most, weights, buffering(protons, aim));
    }

    /** Whether amounts keep what is never given up: the supplies' limits and that of lactate. */
    boolean allows(double[] amounts) {
        for (int i = 0; i < amounts.length; i++) {
            if (!(amounts[i] >= 0 && amounts[i] <= most[i] * (1 + 1e-12) + 1e-12)) {
                return false;
            }
        }
        return lactate.slack(amounts) >= -LACTATE_ROUNDING;
    }

    /** What a plan is worth by the tabulated balance. */
    PlanScore score(double[] amounts) {
        return score(amounts, protons.ph(amounts));
    }

    /** What a plan is worth that lands at a pH. */
    PlanScore score(double[] amounts, double ph) {
        double ions = 0;
        for (PlanRow want : wants) {
            ions += want.beyond(amounts);
        }
        int additions = 0;
        double amount = 0;
        for (int i = 0; i < amounts.length; i++) {
            if (amounts[i] > 0) {
                additions++;
                amount += weights[i] * amounts[i];
            }
        }
        PhAim aim = question.aim();
        return new PlanScore(aim.beyond(ph), ions, Math.abs(ph - aim.targetPh()) / aim.halfWidth(), additions, amount);
    }

    /** Reads a question. */
    private static final class Draft {
        private final PlanQuestion question;
        private final Mash mash;
        private final double litres;
        private final Map<String, Double> dissolved;
        private final int size;

        Draft(PlanQuestion question, MashPrediction before) {
            this.question = question;
            this.mash = question.mash();
            this.litres = mash.liquor().volume().litres();
            this.size = question.supplies().size();
            Map<String, Double> amounts = new LinkedHashMap<>();
            for (DissolvedAmount ion : before.ions()) {
                amounts.put(ion.symbol(), ion.mgPerL());
            }
            this.dissolved = amounts;
        }

        PlanSpace space() {
            List<PlanRow> wants = new ArrayList<>();
            question.wants().forEach(want -> rows(want, wants));
            double[] most = new double[size];
            double[] weights = new double[size];
            for (int i = 0; i < size; i++) {
                PlanSupply supply = question.supplies().get(i);
                most[i] = effectiveMost(supply);
                weights[i] = supply instanceof PlanSupply.OfWater
                        ? 1 / litres
                        : supply.countedPerUnit() / litres / MMOL_PER_L;
            }
            ProtonTable protons = ProtonTable.of(question);
            return new PlanSpace(
                    question, protons, wants, lactate(), most, weights, PlanSpace.buffering(protons, question.aim()));
        }

        /** No more than a mash can hold, and of chalk no more than still acts beside what is in the mash already. */
        private double effectiveMost(PlanSupply supply) {
            double most = supply.mostSteps() * supply.step();
            if (!isChalk(supply)) {
                return supply.millimolesPerUnit() * most <= Mash.MOST_MMOL_PER_L * litres
                        ? most
                        : Math.floor(Mash.MOST_MMOL_PER_L * litres / supply.millimolesPerUnit() / supply.step())
                                * supply.step();
            }
            double left = mash.chalkLimitGrams();
            for (Addition addition : mash.additions()) {
                if (addition instanceof SaltAddition salt && salt.isChalk()) {
                    left -= salt.mass().grams();
                }
            }
            return Math.min(most, Math.max(0, Math.floor(left / supply.step() + 1e-9) * supply.step()));
        }

        private static boolean isChalk(PlanSupply supply) {
            return supply instanceof PlanSupply.OfSalt salt && salt.addition(0).isChalk();
        }

        /** Moles that one measure of a supply adds to the liquor of the whole mash. */
        private Solution perUnit(PlanSupply supply) {
            if (supply instanceof PlanSupply.OfAcid acid) {
                AcidAddition one = acid.addition(1);
                return one.acid().perMole().scaled(one.millimoles().value() / 1000);
            }
            if (supply instanceof PlanSupply.OfSalt salt) {
                double share = isChalk(supply) ? mash.model().chalkDissolved().value() : 1;
                return salt.salt().perGram().scaled(share);
            }
            return Solution.WATER;
        }

        /** Change of an ion by one measure of a supply, mg/L. */
        private double ionPerUnit(PlanSupply supply, Ion ion) {
            double molPerL = supply instanceof PlanSupply.OfWater water
                    ? water.water().solution().ion(ion)
                            - mash.liquor().solution().ion(ion)
                    : perUnit(supply).ion(ion);
            return 1000 * molPerL * ion.molarMassGPerMol() / litres;
        }

        private double[] ionPerUnit(Ion ion) {
            return question.supplies().stream()
                    .mapToDouble(supply -> ionPerUnit(supply, ion))
                    .toArray();
        }

        /** Change of the alkalinity before acid, mEq/L. */
        private double alkalinityPerUnit(PlanSupply supply) {
            if (supply instanceof PlanSupply.OfWater water) {
                return (water.water().alkalinityMeqPerL() - mash.liquor().alkalinityMeqPerL()) / litres;
            }
            return supply instanceof PlanSupply.OfSalt ? 1000 * perUnit(supply).fixedCharge() / litres : 0;
        }

        private double dissolved(Ion ion) {
            return requireNonNull(dissolved.get(ion.symbol()));
        }

        private void rows(IonWant want, List<PlanRow> rows) {
            switch (want.kind()) {
                case ION -> {
                    Ion ion = want.ion().orElseThrow();
                    ends(want, "ion", dissolved(ion), ionPerUnit(ion), SMALLEST_MG_PER_L, rows);
                }
                case ALKALINITY ->
                    ends(
                            want,
                            "alkalinity",
                            WantedValue.alkalinityMeqPerL(mash),
                            question.supplies().stream()
                                    .mapToDouble(this::alkalinityPerUnit)
                                    .toArray(),
                            SMALLEST_MEQ_PER_L,
                            rows);
                case CHLORIDE_TO_SULFATE -> {
                    want.low().ifPresent(low -> rows.add(ratio(want, "plan.ratio-low", low, 1)));
                    want.high().ifPresent(high -> rows.add(ratio(want, "plan.ratio-high", high, -1)));
                }
            }
        }

        private static void ends(
                IonWant want, String code, double now, double[] perUnit, double smallest, List<PlanRow> rows) {
            want.low().ifPresent(low -> rows.add(end(want, "plan." + code + "-low", low, now, perUnit, smallest, 1)));
            want.high()
                    .ifPresent(high -> rows.add(end(want, "plan." + code + "-high", high, now, perUnit, smallest, -1)));
        }

        private static PlanRow end(
                IonWant want, String code, double limit, double now, double[] perUnit, double smallest, int sign) {
            double scale = sign / Math.max(smallest, limit);
            double[] scaled = new double[perUnit.length];
            for (int i = 0; i < scaled.length; i++) {
                scaled[i] = scale * perUnit[i];
            }
            String member = sign > 0 ? "/low" : "/high";
            return new PlanRow(code, want.name(), want.pointer() + member, limit, scale * (now - limit), scaled, scale);
        }

        private PlanRow ratio(IonWant want, String code, double limit, int sign) {
            double[] chloride = ionPerUnit(Ion.CHLORIDE);
            double[] sulfate = ionPerUnit(Ion.SULFATE);
            double scale = sign / RATIO_MG_PER_L;
            double[] scaled = new double[size];
            for (int i = 0; i < size; i++) {
                scaled[i] = scale * (chloride[i] - limit * sulfate[i]);
            }
            double now = dissolved(Ion.CHLORIDE) - limit * dissolved(Ion.SULFATE);
            String member = sign > 0 ? "/low" : "/high";
            return new PlanRow(code, want.name(), want.pointer() + member, limit, scale * now, scaled, 0);
        }

        /** The mash may hold more lactate than is accepted before any plan; then a plan adds none. */
        private PlanRow lactate() {
            Acid lactic = Acids.get("lactic");
            double limit = question.mostLactateMgPerL();
            double scale = 1 / Math.max(SMALLEST_MG_PER_L, limit);
            double[] perUnit = new double[size];
            for (int i = 0; i < size; i++) {
                PlanSupply supply = question.supplies().get(i);
                boolean brings = supply instanceof PlanSupply.OfMalt
                        || (supply instanceof PlanSupply.OfAcid acid
                                && acid.product().acid().id().equals(lactic.id()));
                perUnit[i] = brings ? -scale * supply.millimolesPerUnit() * lactic.anionMolarMassGPerMol() / litres : 0;
            }
            double now = dissolved.getOrDefault(lactic.anion(), 0.0);
            return new PlanRow(
                    "plan.lactate",
                    lactic.anion(),
                    "/mostLactate",
                    limit,
                    Math.max(0, scale * (limit - now)),
                    perUnit,
                    -scale);
        }
    }
}
