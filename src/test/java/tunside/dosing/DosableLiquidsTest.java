package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.chemistry.Solution;
import tunside.finding.Outcome;
import tunside.mash.BufferCurve;
import tunside.mash.Estimate;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MeasuredMalt;
import tunside.quantity.Alkalinity;
import tunside.quantity.Mass;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;
import tunside.water.Water;
import tunside.water.WaterReport;

class DosableLiquidsTest {
    private static final Temperature COLD = new Temperature(20);

    private static Solution water() {
        return Water.of(new WaterReport(
                        Map.of(Ion.CALCIUM, 1.5, Ion.MAGNESIUM, 0.3),
                        Optional.of(new Alkalinity(2.5)),
                        OptionalDouble.of(4.5),
                        OptionalDouble.of(7.5),
                        COLD))
                .solution();
    }

    private static LiquorDose liquor() {
        return LiquorDose.of(water(), new Volume(15), COLD);
    }

    private static StagedDose dose(DosableLiquid liquid, AcidProduct product, double ph, DoseAim aim) {
        return Doses.dose(DoseQuestion.of(
                liquid,
                new PhReading(ph, 0.01),
                0,
                List.of(),
                aim,
                Optional.of(liquid.acid(product, 1e-4, 1e9)),
                liquid.base(Salts.get(Bases.USUAL), 0.1)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"lactic", "phosphoric", "hydrochloric", "sulfuric", "citric", "acetic"})
    void theDoseOfALiquorIsThatOfTheChargeBalance(String acid) {
        AcidProduct product = Doses.acid(acid, 10);
        double grams = dose(liquor(), product, liquor().startPh(), new DoseAim(5.6, 5.3, 5.9, 0.05))
                .totalGrams();
        Solution dosed = liquor().dosed(product, grams * product.molPerKg());
        assertThat(ChargeBalance.solve(dosed, COLD).ph()).isCloseTo(5.6, within(0.003));
    }

    @Test
    void theLiquorItsAlkalinityAndItsReach() {
        assertThat(liquor().startPh()).isCloseTo(7.5, within(1e-6));
        assertThat(liquor().alkalinityMeqPerL()).isCloseTo(2.503, within(0.001));
        assertThat(liquor().prior().median()).isEqualTo(liquor().alkalinityMeqPerL());
        assertThat(liquor().prior().unit()).isEqualTo("mEq/L");
        assertThat(liquor().prior().logStandardDeviation()).isCloseTo(Math.hypot(0.05, 0.05 / 2.503), within(1e-4));
        assertThat(liquor().mostMeq()).isCloseTo(15 * (2 * liquor().alkalinityMeqPerL() + 2), within(1e-9));
        assertThat(liquor().acid(Doses.acid("phosphoric", 10), 1, 1e9).mostGrams())
                .isCloseTo(liquor().mostMeq() / 1.0205, withPercentage(0.01));
        assertThat(liquor().acid(Doses.acid("phosphoric", 10), 1, 7).mostGrams())
                .isEqualTo(7);
        assertThat(liquor().base(Salts.get("sodium-bicarbonate"), 1).mostGrams())
                .isCloseTo(liquor().mostMeq() / 11.904, withPercentage(0.01));
        LiquorDose distilled = LiquorDose.of(Solution.WATER, new Volume(1), COLD);
        assertThat(distilled.prior().logStandardDeviation()).isEqualTo(0.7);
        assertThat(distilled.mostMeq()).isEqualTo(2);
        assertThatThrownBy(() -> LiquorDose.of(water(), new Volume(0), COLD)).hasMessageContaining("above 0");
    }

    @Test
    void theCurveOfALiquorIsItsTitration() {
        TitrationCurve curve = liquor().curve();
        double need = curve.at(5.4).meq(1) - curve.at(7.5).meq(1);
        double expected = 15000
                * ChargeBalance.dose(water(), Solution.of(Ion.CHLORIDE, 1), 5.4, COLD, 1)
                        .orElseThrow();
        assertThat(need).isCloseTo(expected, withPercentage(0.01));
        assertThat(curve.at(7.5).meq(1)).isCloseTo(0, within(1e-3));
        assertThat(curve.fixedMeq().at(4)).isCloseTo(1.5, within(0.03));
    }

    @Test
    void aMeasuredPhFixesTheCarbon() {
        LiquorDose measured = liquor().at(7.0);
        assertThat(measured.startPh()).isEqualTo(7.0);
        assertThat(ChargeBalance.solve(measured.solution(), COLD).ph()).isCloseTo(7.0, within(1e-6));
        assertThat(measured.solution().carbon()).isGreaterThan(water().carbon());
        assertThat(liquor().at(10.5).solution().carbon()).isLessThan(water().carbon());
    }

    @Test
    void withTheCarbonDioxideGoneThePhIsHigher() {
        Solution dosed = liquor().dosed(Doses.acid("lactic", 10), 30);
        double closed = ChargeBalance.solve(dosed, COLD).ph();
        assertThat(LiquorDose.openPh(dosed)).isBetween(7.0, 8.2).isGreaterThan(closed);
        assertThat(LiquorDose.openFinding(7.3, 5.5).outcome()).isEqualTo(Outcome.NOTE);
        assertThat(LiquorDose.openFinding(7.3, 5.5).observed()).hasValue(7.3);
        assertThat(dosed.acids().values()).containsExactly(0.002);
    }

    @Test
    void bicarbonateRaisesALiquorOnlySoFar() {
        LiquorDose sour = LiquorDose.of(liquor().dosed(Doses.acid("hydrochloric", 10), 33), new Volume(15), COLD);
        Supply base = sour.base(Salts.get("sodium-bicarbonate"), 0.01);
        assertThat(base.reagent().meqPerGram(6.0)).isNegative();
        assertThat(base.reagent().meqPerGram(10.9)).isZero();
        Solution perGram = Salts.get("sodium-bicarbonate").perGram();
        DoseQuestion question = DoseQuestion.of(
                sour,
                new PhReading(sour.startPh(), 0.01),
                0,
                List.of(),
                new DoseAim(6.2, 6.0, 6.4, 0.05),
                Optional.empty(),
                base);
        double grams = DoseAdvice.of(question, List.of()).staged().orElseThrow().totalGrams();
        Solution dosed = sour.solution().plus(perGram.scaled(grams / 15));
        assertThat(ChargeBalance.solve(dosed, COLD).ph()).isCloseTo(6.2, within(0.01));
    }

    @Test
    void aMashBuffersAsItsMaltsDo() {
        MashDose mash = new MashDose(Doses.pale());
        assertThat(mash.prior().median()).isCloseTo(38, within(1e-6));
        assertThat(mash.prior().unit()).isEqualTo("mEq/(kg pH)");
        assertThat(mash.prior().logStandardDeviation()).isEqualTo(0.28);
        assertThat(mash.volume().litres()).isEqualTo(17);
        TitrationCurve curve = mash.curve();
        assertThat(curve.at(5.4).bufferingMeqPerPh(1))
                .isCloseTo(Doses.pale().balance().bufferingMeqPerPh(5.4), withPercentage(0.01));
        assertThat(curve.scaledMeq().at(5.3) - curve.scaledMeq().at(5.4)).isCloseTo(19, within(1e-6));
        assertThat(mash.mostMeq())
                .isCloseTo(450 + 17 * (2 * Doses.pale().liquor().alkalinityMeqPerL() + 2), within(1e-9));
        assertThat(mash.acid(Doses.acid("phosphoric", 10), 1, 1e9).mostGrams())
                .isCloseTo(mash.mostMeq() / 1.0205, withPercentage(0.01));
        assertThat(mash.acid(Doses.acid("phosphoric", 10), 2, 9)).satisfies(supply -> {
            assertThat(supply.mostGrams()).isEqualTo(9);
            assertThat(supply.stepGrams()).isEqualTo(2);
        });
        assertThat(mash.base(Salts.get("calcium-carbonate"), 1).mostGrams()).isCloseTo(8.5, within(1e-9));
        assertThat(mash.base(Salts.get("calcium-hydroxide"), 1).mostGrams())
                .isCloseTo(mash.mostMeq() / 26.99, withPercentage(0.1));
    }

    @Test
    void measuredMaltsAreSurer() {
        Malt measured = Malt.of("pale").with(MeasuredMalt.of(new Estimate(5.74, 0.04), BufferCurve.linear(40, 0.1)));
        Grist half =
                new Grist(List.of(new GristPart(measured, new Mass(3)), new GristPart(Malt.of("munich"), new Mass(3))));
        Grist all = new Grist(List.of(new GristPart(measured, new Mass(3))));
        double byClass = 3 * Malt.of("munich").maltClass().buffering().value();
        double expected = Math.hypot(byClass * 0.28, 120 * 0.1) / (byClass + 120);
        assertThat(prior(half).logStandardDeviation()).isCloseTo(expected, within(1e-12));
        assertThat(prior(all).logStandardDeviation()).isCloseTo(0.1, within(1e-12));
        assertThat(prior(all).median()).isCloseTo(40, within(1e-6));
        Malt sure = Malt.of("pale").with(MeasuredMalt.of(new Estimate(5.74, 0.04), BufferCurve.linear(40, 0)));
        assertThat(prior(new Grist(List.of(new GristPart(sure, new Mass(3))))).logStandardDeviation())
                .isEqualTo(0.02);
    }

    private static BufferingPrior prior(Grist grist) {
        return new MashDose(Mash.of(grist, Liquor.distilled(new Volume(15)))).prior();
    }

    @Test
    void aReadingIsHeldAgainstTheGrist() {
        MashDose mash = new MashDose(Doses.pale());
        double predicted = tunside.mash.MashPrediction.of(Doses.pale()).ph();
        double deviation =
                Math.hypot(tunside.mash.MashPrediction.of(Doses.pale()).standardUncertainty(), 0.03);
        assertThat(outcome(mash, predicted + 2.49 * deviation)).isEqualTo(Outcome.PASS);
        assertThat(outcome(mash, predicted - 2.51 * deviation)).isEqualTo(Outcome.CAUTION);
        assertThat(outcome(mash, predicted + 3.99 * deviation)).isEqualTo(Outcome.CAUTION);
        assertThat(outcome(mash, predicted + 4.01 * deviation)).isEqualTo(Outcome.STOP);
        assertThat(mash.finding(new PhReading(5.6, 0.03)).expected()).hasValue(predicted);
        assertThat(mash.finding(new PhReading(5.6, 0.03)).observed()).hasValue(5.6);
        assertThat(mash.finding(new PhReading(5.6, 0.03)).pointer()).isEqualTo("/measuredPh");
    }

    private static Outcome outcome(MashDose mash, double ph) {
        return mash.finding(new PhReading(ph, 0.03)).outcome();
    }

    @Test
    void wortBuffersByItsExtractOrItsMalt() {
        WortDose extract = WortDose.ofExtract(new Volume(20), 12, false);
        assertThat(extract.prior().median()).isCloseTo(5.0, within(0.001));
        assertThat(extract.prior().logStandardDeviation()).isEqualTo(0.12);
        assertThat(extract.evidence()).isEqualTo(WortDose.Evidence.EXTRACT);
        WortDose malt = WortDose.ofMalt(new Volume(20), 4, false);
        assertThat(malt.prior().median()).isCloseTo(6, within(1e-9));
        assertThat(malt.prior().logStandardDeviation()).isEqualTo(0.10);
        assertThat(malt.prior().unit()).isEqualTo("mEq/(L pH)");
        assertThat(malt.evidence()).isEqualTo(WortDose.Evidence.MALT);
        assertThat(WortDose.ofMalt(new Volume(20), 4, true).prior().logStandardDeviation())
                .isCloseTo(Math.hypot(0.10, 0.25), within(1e-12));
        assertThat(extract.curve().at(5).bufferingMeqPerPh(1)).isCloseTo(100, within(0.01));
        assertThat(extract.mostMeq()).isCloseTo(300, within(0.03));
        assertThat(extract.acid(Doses.acid("phosphoric", 10), 1, 1e9).mostGrams())
                .isCloseTo(300 / 1.0205, withPercentage(0.05));
        assertThat(extract.base(Salts.get("sodium-bicarbonate"), 1).mostGrams())
                .isCloseTo(300 / 11.904, withPercentage(0.05));
    }

    @Test
    void aDoseForWortIsArithmetic() {
        WortDose wort = WortDose.ofExtract(new Volume(20), 12, false);
        double grams = dose(wort, Doses.acid("hydrochloric", 10), 5.5, new DoseAim(5.2, 5.1, 5.3, 0.05))
                .totalGrams();
        assertThat(grams).isCloseTo(20 * 5.0004 * 0.3 / 2.7429, withPercentage(0.3));
    }

    @Test
    void extractIsBoundedAndFollowsGravity() {
        assertThat(WortDose.plato(1.048)).isCloseTo(11.86, within(0.01));
        assertThat(WortDose.plato(1.003)).isCloseTo(0.77, within(0.01));
        assertThatThrownBy(() -> WortDose.plato(1.0029)).hasMessageContaining("1.003");
        assertThatThrownBy(() -> WortDose.plato(1.161)).hasMessageContaining("1.16");
        assertThatThrownBy(() -> WortDose.ofExtract(new Volume(20), 0.9, false)).hasMessageContaining("1 to 35");
        assertThatThrownBy(() -> WortDose.ofExtract(new Volume(20), 35.1, false))
                .hasMessageContaining("1 to 35");
        assertThatThrownBy(() -> WortDose.ofMalt(new Volume(20), 0, false)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> WortDose.ofExtract(new Volume(0), 12, false)).hasMessageContaining("above 0");
    }

    @Test
    void aBenchTitrationTellsTheBuffering() {
        WortDose wort = WortDose.ofExtract(new Volume(20), 12, true);
        Reagent acid = wort.acid(Doses.acid("hydrochloric", 1), 1, 1).reagent();
        double perStep = 0.2 * 4 * 0.25 / acid.meqPerGram(5); // 0.2 L of 4 mEq/(L pH), a quarter of a pH
        List<PastAddition> steps = List.of(
                new PastAddition(acid, perStep, Optional.of(new PhReading(4.65, 0.01))),
                new PastAddition(acid, perStep, Optional.of(new PhReading(4.40, 0.01))));
        WortDose titrated = wort.titrated(new Volume(0.2), new PhReading(4.9, 0.01), 0, steps);
        assertThat(titrated.prior().median()).isCloseTo(4, within(0.05));
        assertThat(titrated.prior().logStandardDeviation()).isBetween(0.03, 0.06);
        assertThat(titrated.evidence()).isEqualTo(WortDose.Evidence.BENCH_TITRATION);
        assertThat(titrated.finding(true).outcome()).isEqualTo(Outcome.PASS);
        assertThat(wort.finding(true).outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(wort.finding(false).outcome()).isEqualTo(Outcome.NOTE);
        assertThat(wort.finding(false).observed().orElseThrow()).isCloseTo(5, within(0.001));
        assertThatThrownBy(() -> wort.titrated(new Volume(0), new PhReading(4.9, 0.01), 0, steps))
                .hasMessageContaining("above 0");
    }

    @Test
    void aHistoryBeyondAllReasonIsRefused() {
        WortDose wort = WortDose.ofExtract(new Volume(20), 12, false);
        Reagent acid = new Reagent("strong", "strong acid", true, ph -> 1, 0, OptionalDouble.empty());
        List<PastAddition> most = List.of(new PastAddition(acid, 3000, Optional.empty()));
        assertThat(wort.plausible(most, 5)).isSameAs(most);
        List<PastAddition> more = List.of(
                new PastAddition(acid, 1600, Optional.empty()), new PastAddition(Lines.BASE, 1600, Optional.empty()));
        assertThatThrownBy(() -> wort.plausible(more, 5))
                .hasMessageContaining("3000 mEq in all")
                .hasMessageContaining("3200");
    }
}
