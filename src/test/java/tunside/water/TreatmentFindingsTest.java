package tunside.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.chemistry.Solution;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Volume;

/** The numbers that a treatment's findings carry, against what the treatment did. */
class TreatmentFindingsTest {
    private static final Volume LITRE = new Volume(1);
    private static final double LIME_G_PER_MOL = 74.092;
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private static Finding finding(TreatmentStep step, String code) {
        return Waters.finding(step.findings(), code);
    }

    private static Liming lime(double kilograms) {
        return new Liming(Optional.of(new Mass(kilograms)), NONE, NONE);
    }

    @Test
    void aBoilTellsHowMuchAlkalinityFellAndHowMuchIsLeft() {
        Water hard = Waters.model(110, 3, 40);
        TreatmentStep step = Boiling.usual().applied(hard, LITRE);
        Finding boiling = finding(step, "water.boiling");
        assertThat(boiling.observed().getAsDouble()).isCloseTo(2, within(1e-9));
        assertThat(boiling.expected().getAsDouble()).isCloseTo(1, within(1e-9));
        // 110 mg of calcium less 40: more than a quarter is left
        assertThat(step.findings()).extracting(Finding::code).doesNotContain("water.boiling-calcium");
        TreatmentStep most = Boiling.usual().applied(Waters.model(110, 5.4, 40), LITRE);
        Finding spent = finding(most, "water.boiling-calcium");
        assertThat(spent.observed().getAsDouble()).isCloseTo(1, within(1e-9));
        assertThat(Boiling.usual().applied(Waters.model(30, 0.9, 40), LITRE).findings())
                .extracting(Finding::code)
                .containsExactly("water.boiling");
    }

    @Test
    void underALidTheCarbonDioxideStaysAndLessFalls() {
        Water hard = Waters.model(110, 5.4, 40);
        Water open = Boiling.of(OptionalDouble.of(0), NONE, false)
                .applied(hard, LITRE)
                .water();
        TreatmentStep lid = Boiling.of(OptionalDouble.of(0), NONE, true).applied(hard, LITRE);
        assertThat(lid.water().alkalinityMeqPerL()).isGreaterThan(open.alkalinityMeqPerL() + 0.5);
        assertThat(lid.water().solution().carbon() + lid.calciumCarbonateMolPerKg())
                .isCloseTo(hard.solution().carbon(), within(1e-12));
        assertThat(open.ph()).isGreaterThan(lid.water().ph());
        // an alkaline water takes none up
        Water caustic =
                Water.closed(Solution.of(Ion.SODIUM, 0.002).withCarbon(1e-5), Waters.ROOM, 11, java.util.List.of());
        assertThat(Boiling.usual().applied(caustic, LITRE).water().solution().carbon())
                .isCloseTo(1e-5, within(1e-15));
    }

    @Test
    void aStatedResidualIsWhereABoilEnds() {
        Water hard = Waters.model(110, 5.4, 40);
        assertThat(Boiling.of(NONE, OptionalDouble.of(1.5), false)
                        .applied(hard, LITRE)
                        .water()
                        .alkalinityMeqPerL())
                .isCloseTo(1.5, within(1e-9));
        assertThat(new Liming(Optional.empty(), NONE, OptionalDouble.of(1.5))
                        .applied(hard, LITRE)
                        .water()
                        .alkalinityMeqPerL())
                .isCloseTo(1.5, within(1e-9));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Boiling(NONE, NONE, OptionalDouble.of(1.1)))
                .withMessageContaining("carbon dioxide");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Liming(Optional.empty(), OptionalDouble.of(2.1), NONE))
                .withMessageContaining("supersaturation");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Liming(Optional.empty(), NONE, OptionalDouble.of(10.1)))
                .withMessageContaining("residual alkalinity");
    }

    /** Carbon dioxide and half the alkalinity, but of that no more than there is calcium for. */
    @Test
    void theFormulasDoseIsThatOfTheCarbonDioxideAndTheCalcium() {
        Water moderate = Waters.moderate();
        double carbonDioxide = WaterProfile.of(moderate, Waters.ROOM).carbonDioxideMmolPerL();
        assertThat(1000 * Liming.doseMolPerKg(moderate)).isCloseTo(carbonDioxide + 1.15, within(1e-9));
        Water sodic = Waters.model(20, 5, 40);
        double ofSodic = WaterProfile.of(sodic, Waters.ROOM).carbonDioxideMmolPerL();
        assertThat(1000 * Liming.doseMolPerKg(sodic)).isCloseTo(ofSodic + 20 / 40.078, within(1e-9));
    }

    @ParameterizedTest(name = "{0} of the formula: {1}")
    @CsvSource({"1.04, PASS", "1.06, CAUTION"})
    void moreLimeThanTheFormulasIsRemarkedOn(double share, Outcome outcome) {
        Water moderate = Waters.moderate();
        double formula = Liming.doseMolPerKg(moderate);
        TreatmentStep step = lime(share * formula * LIME_G_PER_MOL / 1000).applied(moderate, LITRE);
        Finding liming = finding(step, "water.liming");
        assertThat(liming.outcome()).isEqualTo(outcome);
        assertThat(liming.observed().getAsDouble()).isCloseTo(1000 * share * formula, within(1e-4));
        assertThat(liming.expected().getAsDouble()).isCloseTo(1000 * formula, within(1e-9));
        Finding ph = finding(step, "water.liming-ph");
        assertThat(ph.observed()).hasValue(step.water().ph());
        assertThat(ph.expected()).hasValue(10.8);
        assertThat(step.findings()).extracting(Finding::code).doesNotContain("water.liming-calcium");
    }

    @Test
    void limeIsWeighedForTheWholeLiquor() {
        Water moderate = Waters.moderate();
        TreatmentStep one = Liming.usual().applied(moderate, LITRE);
        TreatmentStep ten = Liming.usual().applied(moderate, new Volume(10));
        assertThat(one.grams()).isCloseTo(LIME_G_PER_MOL * Liming.doseMolPerKg(moderate), within(1e-4));
        assertThat(ten.grams()).isCloseTo(10 * one.grams(), within(1e-12));
        TreatmentStep weighed = lime(0.002).applied(moderate, new Volume(20));
        assertThat(weighed.grams()).isCloseTo(2, within(1e-12));
        assertThat(finding(weighed, "water.liming").observed().getAsDouble())
                .isCloseTo(100 / LIME_G_PER_MOL, within(1e-4));
    }

    @Test
    void limeCannotWorkWithoutCalcium() {
        Water sodic = Waters.model(20, 5, 40);
        Finding calcium = finding(Liming.usual().applied(sodic, LITRE), "water.liming-calcium");
        assertThat(calcium.outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(calcium.observed().getAsDouble()).isCloseTo(40 / 40.078, within(1e-9));
        assertThat(calcium.expected().getAsDouble()).isCloseTo(5, within(1e-9));
    }

    @ParameterizedTest(name = "{0} g/L of lime: {1}")
    @CsvSource({"1.59, PASS", "1.61, CAUTION"})
    void noMoreLimeDissolvesThanItsSolubility(double grams, Outcome outcome) {
        Finding solubility = finding(lime(grams / 1000).applied(Waters.moderate(), LITRE), "water.lime-solubility");
        assertThat(solubility.outcome()).isEqualTo(outcome);
        assertThat(solubility.observed().getAsDouble()).isCloseTo(grams, within(1e-9));
        assertThat(solubility.expected()).hasValue(1.6);
    }

    @Test
    void chalkTellsHowMuchOfItDissolved() {
        TreatmentStep step = new SaltTreatment(Salts.get("calcium-carbonate"), new Mass(0.002))
                .applied(Water.distilled(), new Volume(10));
        Finding chalk = finding(step, "water.chalk");
        double dissolved = step.water().solution().ion(Ion.CALCIUM) * 100_086;
        assertThat(chalk.observed().getAsDouble()).isCloseTo(dissolved, within(0.01));
        assertThat(chalk.expected().getAsDouble()).isCloseTo(200, within(1e-9));
        assertThat(step.grams()).isCloseTo(2, within(1e-12));
        // 12 mg of the 200 dissolve; the rest stays at the bottom
        assertThat(1000 * 100.086 * step.calciumCarbonateMolPerKg() + dissolved).isCloseTo(200, within(0.01));
        assertThat(step.findings()).extracting(Finding::code).containsExactly("water.chalk");
    }

    @Test
    void gypsumIsLookedAtWhereCalciumMeetsSulfate() {
        assertThat(salt("sodium-chloride", 0.0005, Waters.moderate()).findings())
                .isEmpty();
        assertThat(salt("epsom-salt", 0.0005, Water.distilled()).findings()).isEmpty();
        Finding epsom = finding(salt("epsom-salt", 0.0005, Waters.moderate()), "water.gypsum");
        assertThat(epsom.outcome()).isEqualTo(Outcome.PASS);
        assertThat(epsom.observed().getAsDouble()).isBetween(-3.0, -1.0);
        assertThat(salt("calcium-hydroxide", 0.0005, Water.distilled()).findings())
                .isEmpty();
    }

    private static TreatmentStep salt(String id, double kilograms, Water water) {
        return new SaltTreatment(Salts.get(id), new Mass(kilograms)).applied(water, LITRE);
    }

    @ParameterizedTest
    @CsvSource({
        "calcium-chloride, calcium-chloride-dihydrate",
        "calcium-chloride-dihydrate, calcium-chloride",
        "calcium-chloride-hexahydrate, calcium-chloride-dihydrate"
    })
    void theOtherHydrateIsAddedToTheCalciumThatWasThere(String id, String other) {
        Water moderate = Waters.moderate();
        Finding hydrate = finding(salt(id, 0.0005, moderate), "water.calcium-chloride-hydrate");
        double before = 50;
        assertThat(hydrate.observed().getAsDouble() - before)
                .isCloseTo(0.5 * 40_078 / Salts.get(id).molarMassGPerMol(), within(1e-6));
        assertThat(hydrate.expected().getAsDouble() - before)
                .isCloseTo(0.5 * 40_078 / Salts.get(other).molarMassGPerMol(), within(1e-6));
        assertThat(hydrate.subject()).isEqualTo(Salts.get(other).name());
    }

    @Test
    void aDilutedStrongAcidPasses() {
        AcidProduct diluted = AcidProduct.of(Acids.get("hydrochloric"), Strength.percent(5));
        Finding strength = finding(
                new AcidTreatment(diluted, new Mass(0.001)).applied(Water.distilled(), LITRE), "water.acid-strength");
        assertThat(strength.outcome()).isEqualTo(Outcome.PASS);
        assertThat(strength.observed().getAsDouble()).isCloseTo(5, within(1e-9));
        assertThat(strength.subject()).isEqualTo(Acids.get("hydrochloric").name());
    }

    /** The most that is taken, and a little more. */
    @Test
    void treatmentsEndAtTheirLargestAmounts() {
        double salt = 0.25 * Salts.get("sodium-chloride").molarMassGPerMol() / 1000;
        assertThat(salt("sodium-chloride", 0.9999 * salt, Water.distilled()).grams())
                .isCloseTo(1000 * 0.9999 * salt, within(1e-9));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> salt("sodium-chloride", 1.0001 * salt, Water.distilled()))
                .withMessageContaining("but is 250.02");
        AcidProduct acid = AcidProduct.of(Acids.get("hydrochloric"), Strength.percent(10));
        double most = 0.25 / acid.actingMolPerKg();
        assertThat(new AcidTreatment(acid, new Mass(2 * 0.9999 * most))
                        .applied(Water.distilled(), new Volume(2))
                        .grams())
                .isCloseTo(2000 * 0.9999 * most, within(1e-9));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new AcidTreatment(acid, new Mass(1.0001 * most)).applied(Water.distilled(), LITRE))
                .withMessageContaining("but is 250.02");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> lime(0.007410).applied(Waters.moderate(), LITRE))
                .withMessageContaining("but is 100.0");
    }

    @Test
    void aTitrationFromNextToItsEndPointFindsNoWater() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Water.of(Waters.titrated(20, 4.51)))
                .withMessageContaining("no water of pH 4.51 takes 20.0 mEq/L of acid down to pH 4.5");
        for (double alkalinity : new double[] {0.5, 5, 20}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Water.of(Waters.titrated(alkalinity, 4.505)))
                    .withMessageContaining("too near the end point");
        }
        // nothing was titrated: all the acid that there is makes the pH, 10^-4.4 mol/L by activity
        Water sour = Water.of(Waters.titrated(0, 4.4));
        assertThat(sour.alkalinityMeqPerL()).isBetween(-0.043, -0.0398);
        assertThat(sour.ph()).isCloseTo(4.4, within(1e-6));
        assertThat(Water.of(Waters.titrated(0, 4.5)).ph()).isCloseTo(4.5, within(1e-6));
        Water near = Water.of(Waters.titrated(0.5, 4.7));
        assertThat(near.ph()).isCloseTo(4.7, within(1e-6));
        assertThat(near.alkalinityMeqPerL()).isGreaterThan(0.5);
    }

    @Test
    void aPhThatTheAlkalinityCannotHaveIsToldBesideTheOneItHas() {
        Water water = Water.of(Waters.titrated(0.05, 10.9));
        Finding against = Waters.finding(water.findings(), "water.ph-against-alkalinity");
        assertThat(against.observed()).hasValue(10.9);
        assertThat(against.expected()).hasValue(water.ph());
    }
}
