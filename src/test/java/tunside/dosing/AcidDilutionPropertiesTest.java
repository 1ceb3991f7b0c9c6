package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tunside.chemistry.AcidProduct;
import tunside.quantity.Mass;
import tunside.quantity.Temperature;

/** Laws of dilution, tried on 60 seeded cases each. */
class AcidDilutionPropertiesTest {
    private static final List<String> LIQUIDS =
            List.of("lactic", "phosphoric", "hydrochloric", "sulfuric", "citric", "acetic");
    private static final double[] STRONGEST = {90, 85, 40, 100, 50, 60};
    private static final Percentage EXACT = Percentage.withPercentage(1e-10);

    /** An acid in hand, a weaker one, and an amount. */
    private record Case(AcidProduct strong, AcidProduct middle, AcidProduct weak, Mass mass, SplittableRandom random) {
        static Case of(long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            int which = random.nextInt(LIQUIDS.size());
            return of(random, LIQUIDS.get(which), STRONGEST[which]);
        }

        static Case of(SplittableRandom random, String acid, double strongest) {
            double strong = strongest * random.nextDouble(0.2, 1);
            double middle = strong * random.nextDouble(0.3, 0.99);
            double weak = middle * random.nextDouble(0.05, 0.99);
            return new Case(
                    Doses.acid(acid, strong),
                    Doses.acid(acid, middle),
                    Doses.acid(acid, weak),
                    new Mass(random.nextDouble(0.01, 20)),
                    random);
        }
    }

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    private static double acidGrams(double grams, AcidProduct product) {
        return grams * product.massPercent() / 100;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void massIsConservedAndSoIsTheAcid(long seed) {
        Case c = Case.of(seed);
        for (AcidDilution dilution :
                List.of(AcidDilution.making(c.strong, c.weak, c.mass), AcidDilution.using(c.strong, c.weak, c.mass))) {
            assertThat(acidGrams(dilution.strongMass().grams(), c.strong))
                    .isCloseTo(acidGrams(dilution.weakGrams(), c.weak), EXACT);
            assertThat(dilution.strongMass().grams() * c.strong.molPerKg())
                    .isCloseTo(dilution.weakMillilitres() * c.weak.molPerL(), EXACT);
        }
        assertThat(AcidDilution.making(c.strong, c.weak, c.mass).weakGrams()).isCloseTo(c.mass.grams(), EXACT);
        assertThat(AcidDilution.using(c.strong, c.weak, c.mass).strongMass()).isEqualTo(c.mass);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void usingWhatMakingAskedForGivesTheSame(long seed) {
        Case c = Case.of(seed);
        AcidDilution making = AcidDilution.making(c.strong, c.weak, c.mass);
        AcidDilution using = AcidDilution.using(c.strong, c.weak, making.strongMass());
        assertThat(using.waterMass().grams()).isCloseTo(making.waterMass().grams(), EXACT);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void twoStepsTakeTheSameAcidAndWaterAsOne(long seed) {
        Case c = Case.of(seed);
        AcidDilution once = AcidDilution.using(c.strong, c.weak, c.mass);
        AcidDilution first = AcidDilution.using(c.strong, c.middle, c.mass);
        AcidDilution second = AcidDilution.using(c.middle, c.weak, new Mass(first.weakGrams() / 1000));
        assertThat(second.weakGrams()).isCloseTo(once.weakGrams(), EXACT);
        assertThat(first.waterMass().grams() + second.waterMass().grams())
                .isCloseTo(once.waterMass().grams(), EXACT);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void neverMoreStrongAcidThanOfTheWeak(long seed) {
        Case c = Case.of(seed);
        AcidDilution dilution = AcidDilution.making(c.strong, c.weak, c.mass);
        assertThat(dilution.strongMass().grams()).isLessThanOrEqualTo(c.mass.grams());
        assertThat(dilution.waterMass().grams()).isPositive();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void whatIsMadeIsKnownNoBetterThanTheLabel(long seed) {
        Case c = Case.of(seed);
        AcidDilution dilution = AcidDilution.making(c.strong, c.weak, c.mass);
        double label = c.random.nextDouble(0, 0.1);
        AcidDilutionStrength weighed = AcidDilutionStrength.whenWeighed(dilution, label);
        AcidDilutionStrength measured = AcidDilutionStrength.whenMeasured(dilution, label);
        assertThat(weighed.percentUncertainty() / c.weak.massPercent()).isGreaterThanOrEqualTo(label * (1 - 1e-12));
        assertThat(measured.percentUncertainty()).isGreaterThan(weighed.percentUncertainty());
        assertThat(measured.molPerLUncertainty()).isGreaterThan(weighed.molPerLUncertainty());
    }

    private static Case heated(long seed) {
        SplittableRandom random = new SplittableRandom(1000 + seed);
        boolean sulfuric = random.nextInt(3) > 0;
        return Case.of(random, sulfuric ? "sulfuric" : "hydrochloric", sulfuric ? 100 : 40);
    }

    private static AcidDilutionConditions conditions(SplittableRandom random) {
        return new AcidDilutionConditions(
                new Temperature(random.nextDouble(0, 60)),
                new Temperature(random.nextDouble(0, 35)),
                random.nextDouble(40, 60),
                0.01);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void everyStageSurelyStaysBelowTheLimitAndTogetherTheyUseAllAcid(long seed) {
        Case c = heated(seed);
        AcidDilution dilution = AcidDilution.using(c.strong, c.weak, c.mass);
        AcidDilutionConditions conditions = conditions(c.random);
        AcidDilutionPlan plan = AcidDilutionPlan.of(dilution, conditions);
        assertThat(plan.stages()).isNotEmpty().allSatisfy(stage -> {
            assertThat(stage.surelyBelowCelsius()).isLessThanOrEqualTo(conditions.warmLimitCelsius() + 1e-6);
            assertThat(stage.acidGrams()).isPositive();
            assertThat(stage.hottestCelsius()).isGreaterThanOrEqualTo(stage.endCelsius());
        });
        assertThat(plan.stages().stream()
                        .mapToDouble(AcidDilutionStage::acidGrams)
                        .sum())
                .isCloseTo(c.mass.grams(), EXACT);
        assertThat(plan.stages().get(plan.stages().size() - 1).percentAfter()).isCloseTo(c.weak.massPercent(), EXACT);
        List<Double> strengths = new ArrayList<>();
        plan.stages().forEach(stage -> strengths.add(stage.percentAfter()));
        assertThat(strengths).isSorted();
        assertThat(plan.staged())
                .isEqualTo(plan.inOneGo().orElseThrow().surelyBelowCelsius() > conditions.warmLimitCelsius());
    }

    /** Hess: without cooling, two pours end where one ends. */
    @ParameterizedTest
    @MethodSource("seeds")
    void twoPoursWithoutCoolingEndAsWarmAsOne(long seed) {
        Case c = heated(seed);
        AcidDilution dilution = AcidDilution.using(c.strong, c.weak, c.mass);
        AcidDilutionHeats heats = AcidDilutionHeats.of(c.strong.acid()).orElseThrow();
        double acid = dilution.strongMass().grams();
        double share = c.random.nextDouble(0.1, 0.9);
        AcidDilutionMixture water =
                AcidDilutionMixture.water(heats, dilution.waterMass().grams(), 15);
        AcidDilutionMixture once = water.with(c.strong, acid, 22);
        AcidDilutionMixture twice = water.with(c.strong, share * acid, 22).with(c.strong, (1 - share) * acid, 22);
        assertThat(twice.celsius()).isCloseTo(once.celsius(), offset(1e-9));
        assertThat(twice.percent()).isCloseTo(once.percent(), EXACT);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void warmerWaterOrAcidNeverMakesAColderMixture(long seed) {
        Case c = heated(seed);
        AcidDilution dilution = AcidDilution.using(c.strong, c.weak, c.mass);
        double water = c.random.nextDouble(0, 30);
        double acid = c.random.nextDouble(0, 30);
        double end = end(dilution, water, acid);
        assertThat(end(dilution, water + 3, acid)).isGreaterThan(end);
        assertThat(end(dilution, water, acid + 3)).isGreaterThan(end);
        assertThat(end(dilution, water + 3, acid + 3)).isLessThan(end + 6);
    }

    private static double end(AcidDilution dilution, double water, double acid) {
        AcidDilutionConditions conditions =
                new AcidDilutionConditions(new Temperature(water), new Temperature(acid), 50, 0.01);
        return AcidDilutionPlan.of(dilution, conditions).inOneGo().orElseThrow().endCelsius();
    }
}
