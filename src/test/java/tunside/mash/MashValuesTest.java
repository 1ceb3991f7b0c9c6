package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Volume;
import tunside.water.Water;

/** The values that a mash is made of: what they refuse and what they compute. */
class MashValuesTest {
    private static void refuses(org.assertj.core.api.ThrowableAssert.ThrowingCallable code, String inMessage) {
        assertThatThrownBy(code).isInstanceOf(IllegalArgumentException.class).hasMessageContaining(inMessage);
    }

    private static void takes(org.assertj.core.api.ThrowableAssert.ThrowingCallable code) {
        assertThatCode(code).doesNotThrowAnyException();
    }

    @Test
    void anEstimateIsFiniteAndItsUncertaintyNotNegative() {
        refuses(() -> new Estimate(Double.NaN, 0), "value (NaN)");
        refuses(() -> new Estimate(Double.POSITIVE_INFINITY, 0), "value (Infinity)");
        refuses(() -> new Estimate(1, -0.1), "(-0.1)");
        refuses(() -> new Estimate(1, Double.NaN), "(NaN)");
        refuses(() -> new Estimate(1, Double.POSITIVE_INFINITY), "(Infinity)");
        takes(() -> new Estimate(-1, 0));
        assertThat(Estimate.exactly(3)).isEqualTo(new Estimate(3, 0));
        assertThat(Estimate.relative(-4, 0.05)).isEqualTo(new Estimate(-4, 0.2));
    }

    @Test
    void aBufferCurveFallsEverywhereInItsReach() {
        refuses(() -> new BufferCurve(0, 0, 0, 0), "a1 (0.0");
        refuses(() -> new BufferCurve(-501, 0, 0, 0), "a1 (-501.0");
        refuses(() -> new BufferCurve(Double.NaN, 0, 0, 0), "a1 (NaN");
        refuses(() -> new BufferCurve(-40, 501, 0, 0), "a2 (501.0)");
        refuses(() -> new BufferCurve(-40, 0, -501, 0), "a3 (-501.0)");
        refuses(() -> new BufferCurve(-40, 0, 0, -0.1), "relative");
        refuses(() -> new BufferCurve(-40, 0, 0, 1.1), "relative");
        refuses(() -> new BufferCurve(-40, 13.4, 0, 0), "must fall");
        refuses(() -> new BufferCurve(-40, -13.4, 0, 0), "must fall");
        refuses(() -> new BufferCurve(-40, 0, 6, 0), "must fall");
        // turns between the ends: slope -10 - 60 d - 60 d^2 is +5 at -0.5 and below 0 at both ends
        refuses(() -> new BufferCurve(-10, -30, -20, 0), "must fall");
        takes(() -> new BufferCurve(-40, 13.3, 0, 1));
        takes(() -> new BufferCurve(-500, 0, 0, 0));
        takes(() -> new BufferCurve(-40, 0, 5.9, 0));
        takes(() -> new BufferCurve(-40, 0, -500, 0));
    }

    @Test
    void aBufferCurveIsItsPolynomialAndThenItsTangent() {
        BufferCurve curve = new BufferCurve(-44.9, -6.0, 1.0, 0.05);
        assertThat(curve.uptakeMeqPerKg(-0.5)).isCloseTo(44.9 * 0.5 - 6.0 * 0.25 - 0.125, within(1e-12));
        assertThat(curve.uptakeMeqPerKg(0)).isZero();
        double end = -44.9 * 1.5 - 6.0 * 2.25 + 3.375;
        double slope = -44.9 - 12 * 1.5 + 3 * 2.25;
        assertThat(curve.uptakeMeqPerKg(1.5)).isCloseTo(end, within(1e-12));
        assertThat(curve.uptakeMeqPerKg(2.5)).isCloseTo(end + slope, within(1e-12));
        double start = 44.9 * 1.5 - 6.0 * 2.25 - 3.375;
        double startSlope = -44.9 + 12 * 1.5 + 3 * 2.25;
        assertThat(curve.uptakeMeqPerKg(-2.5)).isCloseTo(start - startSlope, within(1e-12));
        assertThat(curve.bufferingMeqPerKgPh()).isEqualTo(44.9);
        assertThat(BufferCurve.linear(38, 0.1)).isEqualTo(new BufferCurve(-38, 0, 0, 0.1));
    }

    @ParameterizedTest
    @ValueSource(doubles = {2.49, 7.51})
    void aMeasuredPhIsThatOfAMalt(double ph) {
        refuses(() -> MeasuredMalt.of(Estimate.exactly(ph), BufferCurve.linear(38, 0)), "distilled-water pH");
        takes(() -> MeasuredMalt.of(Estimate.exactly(2.5), BufferCurve.linear(38, 0)));
        takes(() -> MeasuredMalt.of(Estimate.exactly(7.5), BufferCurve.linear(38, 0)));
    }

    @ParameterizedTest
    @CsvSource({"0.99, false", "1, true", "50, true", "50.1, false"})
    void aMeasuredRatioIsThatOfAMash(double ratio, boolean fine) {
        org.assertj.core.api.ThrowableAssert.ThrowingCallable code =
                () -> new MeasuredMalt(Optional.empty(), OptionalDouble.of(ratio), Optional.empty(), Optional.empty());
        if (fine) {
            takes(code);
        } else {
            refuses(code, "liquor ratio");
        }
    }

    @ParameterizedTest
    @CsvSource({"-50.1, false", "-50, true", "600, true", "600.1, false"})
    void aMeasuredAcidityIsThatOfAMalt(double acidity, boolean fine) {
        org.assertj.core.api.ThrowableAssert.ThrowingCallable code = () -> new MeasuredMalt(
                Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.of(Estimate.exactly(acidity)));
        if (fine) {
            takes(code);
        } else {
            refuses(code, "acidity");
        }
    }

    @Test
    void aGristHasOneToSixtyFourMalts() {
        refuses(() -> new Grist(List.of()), "1 to 64 malts but has 0");
        List<GristPart> parts = new ArrayList<>();
        for (int i = 0; i < 64; i++) {
            parts.add(Mashes.part(Malt.of("caramel", 30 + i), 0.5));
        }
        assertThat(new Grist(parts).kilograms()).isCloseTo(32, within(1e-12));
        parts.add(Mashes.part(Malt.of("pale"), 1));
        refuses(() -> new Grist(parts), "but has 65");
        refuses(() -> Mashes.part(Malt.of("pale"), 0), "above 0");
    }

    @Test
    void equalMaltsAreJoinedInTheOrderOfTheirFirstMention() {
        Grist grist = new Grist(List.of(
                Mashes.part(Malt.of("pale"), 1), Mashes.part(Malt.of("wheat"), 2), Mashes.part(Malt.of("pale"), 3)));
        assertThat(grist.parts()).containsExactly(Mashes.part(Malt.of("pale"), 4), Mashes.part(Malt.of("wheat"), 2));
    }

    @Test
    void aLiquorHasAVolumeAndAPh() {
        refuses(() -> Liquor.distilled(new Volume(0)), "above 0");
        Volume litre = new Volume(1);
        var water = Liquor.distilled(litre).solution();
        refuses(() -> new Liquor(litre, water, 1.99), "from 2 to 12");
        refuses(() -> new Liquor(litre, water, 12.01), "from 2 to 12");
        takes(() -> new Liquor(litre, water, 2));
        takes(() -> new Liquor(litre, water, 12));
        assertThat(Liquor.distilled(litre).alkalinityMeqPerL()).isZero();
    }

    @Test
    void aTitratedLiquorGivesItsTitrationBack() {
        Liquor liquor = Liquor.titrated(new Volume(1), 3, 4.3, 8.3, 4, 1);
        assertThat(liquor.calciumMeqPerL()).isCloseTo(4, within(1e-12));
        assertThat(liquor.magnesiumMeqPerL()).isCloseTo(1, within(1e-12));
        double free = 1000 * Math.pow(10, -4.3);
        double bound = 1 / (1 + Math.pow(10, 6.3523 - 4.3));
        assertThat(liquor.alkalinityMeqPerL() - liquor.carbonMmolPerL() * bound + free)
                .isCloseTo(3, within(1e-4));
        assertThat(liquor.carbonMmolPerL() / liquor.alkalinityMeqPerL()).isCloseTo(1.0018, within(1e-3));
        Liquor acid = Liquor.titrated(new Volume(1), 0.04, 4.3, 8.3, 0, 0);
        assertThat(acid.carbonMmolPerL()).isZero();
        assertThat(liquor.carbonUncertaintyMmolPerL(0)).isZero();
        double share = (1 + Math.pow(10, 6.3523 - 8.2)) / (1 + Math.pow(10, 6.3523 - 8.3));
        assertThat(liquor.carbonUncertaintyMmolPerL(0.1))
                .isCloseTo(Math.abs(share - 1) * liquor.carbonMmolPerL(), within(0.02));
    }

    @Test
    void aReportedWaterIsTakenAsItIs() {
        Water water = Water.distilled();
        Liquor liquor = Liquor.of(new Volume(7), water);
        assertThat(liquor.solution()).isEqualTo(water.solution());
        assertThat(liquor.samplePh()).isEqualTo(water.ph());
        assertThat(liquor.volume().litres()).isEqualTo(7);
        Water acid = new Water(water.solution(), 1, water.temperature(), List.of());
        Water base = new Water(water.solution(), 13, water.temperature(), List.of());
        assertThat(Liquor.of(new Volume(7), acid).samplePh()).isEqualTo(2);
        assertThat(Liquor.of(new Volume(7), base).samplePh()).isEqualTo(12);
    }

    @Test
    void acidsAreCountedFromTheirProduct() {
        AcidProduct phosphoric = AcidProduct.of(Acids.get("phosphoric"), Strength.percent(10));
        AcidAddition weighed = AcidAddition.of(phosphoric, new Mass(0.1));
        assertThat(weighed.millimoles().value()).isCloseTo(100 * 0.1 / 97.994 * 1000, within(1e-9));
        assertThat(weighed.millimoles().standardUncertainty()).isZero();
        assertThat(weighed.millimolesAdded()).isEqualTo(weighed.millimoles().value());
        AcidAddition poured = AcidAddition.of(phosphoric, new Volume(0.1));
        double litre = 1000 * phosphoric.densityGPerMl() * 0.1 / 97.994;
        assertThat(poured.millimoles().value()).isCloseTo(100 * litre, within(1e-6));
        assertThat(poured.millimoles().standardUncertainty())
                .isCloseTo(
                        poured.millimoles().value()
                                * phosphoric.densityUncertaintyGPerMl()
                                / phosphoric.densityGPerMl(),
                        within(1e-9));
        refuses(() -> new AcidAddition(Acids.get("lactic"), Estimate.exactly(-1)), "must not be negative");
        takes(() -> new AcidAddition(Acids.get("lactic"), Estimate.exactly(0)));
    }

    @Test
    void halfOfTheOligomersOfStrongLacticAcidActs() {
        AcidProduct lactic = AcidProduct.of(Acids.get("lactic"), Strength.percent(88));
        Estimate millimoles = AcidAddition.of(lactic, new Mass(0.01)).millimoles();
        double total = 10 * 0.88 / 90.078 * 1000;
        double slow = 1 - lactic.directShare();
        assertThat(slow).isBetween(0.1, 0.2);
        assertThat(millimoles.value()).isCloseTo(total * (1 - slow / 2), within(1e-9));
        assertThat(millimoles.standardUncertainty()).isCloseTo(total * slow / Math.sqrt(12), within(1e-9));
    }

    @Test
    void saltsAreCountedFromTheirFormula() {
        SaltAddition chalk = new SaltAddition(Salts.get("calcium-carbonate"), new Mass(0.0100086));
        assertThat(chalk.isChalk()).isTrue();
        assertThat(chalk.millimolesAdded()).isCloseTo(100, within(1e-9));
        assertThat(new SaltAddition(Salts.get("gypsum"), new Mass(1)).isChalk()).isFalse();
        assertThat(Salts.get("calcium-carbonate").perGram().ion(Ion.CALCIUM)).isPositive();
    }

    @Test
    void aMashHasLimits() {
        Mash pale = Mashes.pale();
        List<Addition> many = new ArrayList<>();
        for (int i = 0; i < 32; i++) {
            many.add(Mashes.acid("lactic", 1));
        }
        takes(() -> pale.withAdditions(many));
        many.add(Mashes.acid("lactic", 1));
        refuses(() -> pale.withAdditions(many), "at most 32 additions but has 33");
        takes(() -> pale.plus(Mashes.acid("lactic", 5000)));
        refuses(() -> pale.plus(Mashes.acid("lactic", 5001)), "at most 250.0 mmol per litre");
        Mash drowned = pale.withAdditions(Collections.nCopies(32, Mashes.acid("sulfuric", 5000)));
        assertThat(drowned.ph()).isZero();
        assertThat(MashPrediction.of(drowned).ph()).isZero();
        assertThat(MashPrediction.of(drowned).isWithinReach()).isFalse();
        assertThat(pale.liquorRatioLPerKg()).isEqualTo(4);
    }

    @Test
    void theTwoPartsOfTheBalanceMakeTheWhole() {
        Mash mash = Mashes.chalky();
        double whole = mash.balance().uptakeMeq(5.3);
        assertThat(mash.maltBalance().uptakeMeq(5.3) + mash.otherBalance().uptakeMeq(5.3))
                .isCloseTo(whole, within(1e-9));
        assertThat(mash.balance().terms()).hasSize(4 + 1 + 2 + 2);
        assertThat(mash.maltBalance().terms()).hasSize(4);
        assertThat(mash.balance().uptakeMeq(mash.ph())).isCloseTo(0, within(1e-6));
    }

    @Test
    void aMashHasAPhHoweverMuchAcidOrBaseGoesIn() {
        Mash acid = Mashes.pale().plus(Mashes.acid("sulfuric", 5000));
        Mash base = Mashes.pale().plus(new SaltAddition(Salts.get("sodium-hydroxide"), new Mass(0.19)));
        assertThat(acid.ph()).isBetween(0.0, 2.0);
        assertThat(base.ph()).isBetween(11.0, 14.0);
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "0.25, 0.905", "0.5, 0.81", "0.65, 0.762", "0.8, 0.714", "1.2, 0.571", "2, 0.571"})
    void aWiderMillGapBuffersLess(double gap, double factor) {
        assertThat(MillGaps.bufferingFactor(gap)).isCloseTo(factor, within(1e-9));
        assertThat(MillGaps.widestMm()).isEqualTo(1.2);
    }

    @Test
    void aMillGapIsZeroToTwo() {
        refuses(() -> new MashConditions(OptionalDouble.of(-0.1), Optional.empty(), false), "gap");
        refuses(() -> new MashConditions(OptionalDouble.of(2.1), Optional.empty(), false), "gap");
        takes(() -> new MashConditions(OptionalDouble.of(0), Optional.empty(), false));
        takes(() -> new MashConditions(OptionalDouble.of(2), Optional.empty(), false));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "10, 0", "20, 0", "34.6410161514, -0.025", "60, -0.05", "600, -0.05"})
    void theRestLowersThePhWithTheLogarithmOfTime(double minutes, double shift) {
        Estimate estimate = MashModel.standard().shiftAfter(minutes);
        assertThat(estimate.value()).isCloseTo(shift, within(1e-9));
        assertThat(estimate.standardUncertainty()).isEqualTo(0.03);
    }

    @Test
    void theStandardModelIsTheConsistentSet() {
        MashModel model = MashModel.standard();
        assertThat(model.calciumDivisor().value()).isEqualTo(3.5);
        assertThat(model.magnesiumDivisor().value()).isEqualTo(7);
        assertThat(model.dilutionPhPerDecade().value()).isEqualTo(0.30);
        assertThat(model.carbonDioxideLost().value()).isZero();
        assertThat(model.bufferingScale()).isEqualTo(new Estimate(1, 0.20));
        assertThat(model.bias().value()).isZero();
        assertThat(model.biasOfMaltTypes()).isEqualTo(new Estimate(0, 0.10));
        MaltClass pale = MaltClasses.get("pale");
        double total =
                Math.hypot(0.20 * pale.buffering().value(), pale.buffering().lotUncertainty());
        assertThat(pale.buffering().value()).isEqualTo(38);
        assertThat(total).isCloseTo(8, within(0.15));
    }

    @Test
    void aModelRefusesNonsense() {
        MashModel model = MashModel.standard();
        refuses(() -> model.withBufferingScale(Estimate.exactly(0.09)), "buffering scale");
        refuses(() -> model.withBufferingScale(Estimate.exactly(10.1)), "buffering scale");
        takes(() -> model.withBufferingScale(Estimate.exactly(0.1)));
        takes(() -> model.withBufferingScale(Estimate.exactly(10)));
        refuses(() -> model.withCarbonDioxideLost(Estimate.exactly(-0.01)), "carbon dioxide");
        refuses(() -> model.withCarbonDioxideLost(Estimate.exactly(1.01)), "carbon dioxide");
        takes(() -> model.withCarbonDioxideLost(Estimate.exactly(1)));
        refuses(() -> model.withBiasOfMaltTypes(Estimate.exactly(-2.01)), "biases");
        refuses(() -> model.withBiasOfMaltTypes(Estimate.exactly(2.01)), "biases");
        takes(() -> model.withBiasOfMaltTypes(Estimate.exactly(2)));
        assertThat(model.withBiasOfMaltTypes(Estimate.exactly(0.1)).biasOfMaltTypes())
                .isEqualTo(Estimate.exactly(0.1));
        assertThat(model.withBufferingScale(Estimate.exactly(2)).bufferingScale())
                .isEqualTo(Estimate.exactly(2));
        assertThat(model.withBufferingScale(Estimate.exactly(2)).calciumDivisor())
                .isEqualTo(model.calciumDivisor());
    }

    @Test
    void theRangesAreThereWithTheirEnds() {
        assertThat(PhRanges.all()).hasSize(13);
        PhRange mash = PhRanges.acceptedMash();
        assertThat(mash.lowPh()).hasValue(5.2);
        assertThat(mash.highPh()).hasValue(5.7);
        assertThat(mash.contains(5.2)).isTrue();
        assertThat(mash.contains(5.7)).isTrue();
        assertThat(mash.contains(5.19)).isFalse();
        assertThat(mash.contains(5.71)).isFalse();
        PhRange runOff = PhRanges.find("run-off").orElseThrow();
        assertThat(runOff.lowPh()).isEmpty();
        assertThat(runOff.contains(3)).isTrue();
        assertThat(runOff.contains(6.01)).isFalse();
        assertThat(PhRanges.find("mash-floor").orElseThrow().contains(9)).isTrue();
        assertThat(PhRanges.find("nothing")).isEmpty();
    }

    /** By hand with 6.352 and 10.329: at pH 7.6 carbon has 0.9484 charges a mole, at 7.4 0.9190, at 8.6 1.0127, at 8.4 1.0028. */
    @Test
    void theCarbonIsAsSureAsThePhOfTheSample() {
        for (double[] row : new double[][] {{7.6, 0.9484 / 0.9190}, {8.6, 1.0127 / 1.0028}}) {
            Liquor liquor = Liquor.titrated(new Volume(10), 3, 4.4, row[0], 2, 1);
            assertThat(liquor.carbonUncertaintyMmolPerL(0.2) / liquor.carbonMmolPerL())
                    .isCloseTo(row[1] - 1, within(3e-4));
            assertThat(liquor.carbonUncertaintyMmolPerL(0)).isZero();
        }
    }
}
