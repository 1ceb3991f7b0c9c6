package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import tunside.quantity.TimeSpan;
import tunside.quantity.Volume;

class MashPredictionTest {
    private static final double NEAR = 1e-6;

    @Test
    void aSingleMaltInDistilledWaterLandsAtItsOwnPh() {
        MashPrediction prediction = MashPrediction.of(Mashes.pale());
        assertThat(prediction.ph()).isCloseTo(5.72, within(1e-9));
        assertThat(prediction.bufferingMeqPerPh()).isCloseTo(190, within(NEAR));
        assertThat(prediction.residualAlkalinityMeqPerL()).isZero();
        assertThat(prediction.treatedResidualAlkalinityMeqPerL()).isZero();
    }

    @Test
    void aMashKnownByTypeIsUncertainByTwoToThreeTenths() {
        for (Mash mash : List.of(Mashes.pale(), Mashes.porter())) {
            MashPrediction prediction = MashPrediction.of(mash);
            assertThat(2 * prediction.standardUncertainty()).isBetween(0.2, 0.3);
        }
    }

    @Test
    void aMashWithMeasuredMaltIsSureToAFewHundredths() {
        Mash mash = Mash.of(
                new Grist(List.of(Mashes.part(Mashes.measured("pale", 5.75, 38), 5))),
                Liquor.titrated(new Volume(20), 2, 4.3, 8, 3, 1));
        assertThat(MashPrediction.of(mash).standardUncertainty()).isBetween(0.04, 0.08);
    }

    @Test
    void theIntervalHoldsNineTenthsOfANormalDistribution() {
        MashPrediction prediction = MashPrediction.of(Mashes.porter());
        double half = 1.6448536269514722 * prediction.standardUncertainty();
        assertThat(prediction.low90()).isCloseTo(prediction.ph() - half, within(1e-12));
        assertThat(prediction.high90()).isCloseTo(prediction.ph() + half, within(1e-12));
    }

    @Test
    void theInfluencesOfAPureMashAreTheErrorsOfItsMalt() {
        MashPrediction prediction = MashPrediction.of(Mashes.pale());
        Map<String, MashPrediction.Influence> byId = new TreeMap<>();
        prediction.influences().forEach(influence -> byId.put(influence.input().id(), influence));
        assertThat(byId.get("malt-ph").phPerUnit()).isCloseTo(1, within(NEAR));
        assertThat(byId.get("malt-ph").phPerUncertainty()).isCloseTo(0.09 * Math.sqrt(1.2), within(NEAR));
        assertThat(byId.get("malt-types-bias").phPerUncertainty()).isCloseTo(0.10, within(NEAR));
        assertThat(byId.get("model-bias").phPerUncertainty()).isCloseTo(0.03, within(NEAR));
        assertThat(byId.get("rest-time").phPerUncertainty()).isCloseTo(0.03, within(NEAR));
        assertThat(byId.get("liquor-volume").phPerUnit()).isCloseTo(0.30 / Math.log(10) / 20, within(NEAR));
        assertThat(byId.get("malt-buffering").phPerUnit()).isCloseTo(0, within(NEAR));
        assertThat(byId).doesNotContainKeys("crush", "decoction", "chalk-dissolved");
        assertThat(prediction.influences().get(0).input().id()).isEqualTo("malt-types-bias");
        double variance = 0;
        for (MashPrediction.Influence influence : prediction.influences()) {
            variance += influence.phPerUncertainty() * influence.phPerUncertainty();
        }
        assertThat(prediction.standardUncertainty()).isCloseTo(Math.sqrt(variance), within(1e-12));
        assertThat(byId.get("malt-types-bias").varianceShare()).isCloseTo(0.01 / variance, within(NEAR));
    }

    @Test
    void measuringTheLimitingInputMakesThePredictionSurer() {
        Mash byType = Mashes.pale();
        Mash measured = Mash.of(new Grist(List.of(Mashes.part(Mashes.measured("pale", 5.72, 38), 5))), byType.liquor());
        assertThat(MashPrediction.of(measured).ph()).isCloseTo(5.72, within(1e-9));
        assertThat(MashPrediction.of(measured).standardUncertainty())
                .isLessThan(MashPrediction.of(byType).standardUncertainty() / 2);
        assertThat(MashPrediction.of(measured).influences())
                .extracting(influence -> influence.input().id())
                .contains("malt-ph", "malt-buffering")
                .startsWith("malt-ph");
    }

    @Test
    void differentMaltsKnownByTypeShareOneErrorAndHaveOneEach() {
        Mash mash = Mash.of(
                new Grist(List.of(Mashes.part(Malt.of("pale", 5), 2.5), Mashes.part(Malt.of("pale", 6), 2.5))),
                Liquor.distilled(new Volume(20)));
        double own = 0.09 * Math.sqrt(1.2);
        double expected = Math.sqrt(own * own / 2 + 0.1 * 0.1 + 2 * 0.03 * 0.03);
        assertThat(MashPrediction.of(mash).standardUncertainty()).isCloseTo(expected, within(0.0005));
    }

    @Test
    void contributionsNameEveryComponentAndSumToZero() {
        MashPrediction prediction = MashPrediction.of(Mashes.porter());
        assertThat(prediction.contributions())
                .extracting(part -> part.kind() + " " + part.subject())
                .containsExactly(
                        "malt pale",
                        "malt munich",
                        "malt caramel (120 EBC)",
                        "malt roasted (1000 EBC)",
                        "liquor ",
                        "calcium ",
                        "magnesium ",
                        "acid lactic");
        assertThat(prediction.contributions().get(5).meq()).isCloseTo(-16 * 4.5 / 3.5, within(NEAR));
        assertThat(prediction.contributions().get(6).meq()).isCloseTo(-16 * 0.9 / 7, within(NEAR));
        double lactic = 12 / (1 + Math.pow(10, 3.8600 - prediction.ph()));
        assertThat(prediction.contributions().get(7).meq()).isCloseTo(-lactic, within(0.01));
        assertThat(prediction.contributions().stream()
                        .mapToDouble(MashPrediction.Contribution::meq)
                        .sum())
                .isCloseTo(0, within(1e-5));
    }

    @Test
    void saltsBringTheirCarbonateAndTheirCalcium() {
        Liquor liquor = Liquor.distilled(new Volume(20));
        Grist grist = new Grist(List.of(Mashes.part(Malt.of("pale"), 5)));
        Mash mash = Mash.of(
                grist,
                liquor,
                Mashes.salt(Mashes.BICARBONATE, 8.4006),
                Mashes.salt(Mashes.GYPSUM, 17.2164),
                Mashes.salt(Mashes.EPSOM, 2.46466));
        MashPrediction prediction = MashPrediction.of(mash);
        assertThat(prediction.contributions())
                .extracting(part -> part.kind() + " " + part.subject())
                .containsExactly("malt pale", "liquor ", "salt bicarbonate", "calcium ", "magnesium ");
        assertThat(prediction.contributions().get(3).meq()).isCloseTo(-200 / 3.5, within(NEAR));
        assertThat(prediction.contributions().get(4).meq()).isCloseTo(-20 / 7.0, within(NEAR));
        double carbonicShare = 1 / (1 + Math.pow(10, prediction.ph() - 6.352));
        assertThat(prediction.contributions().get(2).meq()).isCloseTo(100 * carbonicShare, within(0.05));
        assertThat(prediction.residualAlkalinityMeqPerL()).isZero();
        assertThat(prediction.treatedResidualAlkalinityMeqPerL()).isCloseTo(5 - 10 / 3.5 - 1 / 7.0, within(NEAR));
    }

    @Test
    void residualAlkalinityCountsAcidAtThePredictedPh() {
        MashPrediction prediction = MashPrediction.of(Mashes.porter());
        double untreated = Mashes.porter().liquor().alkalinityMeqPerL() - 4.5 / 3.5 - 0.9 / 7;
        assertThat(prediction.residualAlkalinityMeqPerL()).isCloseTo(untreated, within(NEAR));
        double lactic = -prediction.contributions().get(7).meq() / 16;
        assertThat(prediction.treatedResidualAlkalinityMeqPerL()).isCloseTo(untreated - lactic, within(NEAR));
    }

    @Test
    void theTitrationCurveIsTheBalanceFrom48To64() {
        MashPrediction prediction = MashPrediction.of(Mashes.pale());
        assertThat(prediction.titration()).hasSize(17);
        assertThat(prediction.titration().get(0).ph()).isEqualTo(4.8);
        assertThat(prediction.titration().get(16).ph()).isEqualTo(6.4);
        assertThat(prediction.titration().get(6).acidMeq()).isCloseTo(190 * (5.72 - 5.4), within(NEAR));
        assertThat(prediction.titration().get(10).acidMeq()).isCloseTo(190 * (5.72 - 5.8), within(NEAR));
    }

    @Test
    void ionsAreThoseOfLiquorSaltsAndAcids() {
        Mash mash = Mash.of(
                new Grist(List.of(Mashes.part(Malt.of("pale"), 5), Mashes.part(Malt.of("acidulated"), 0.1))),
                Liquor.titrated(new Volume(20), 2, 4.3, 8, 2, 1),
                Mashes.salt(Mashes.GYPSUM, 4),
                Mashes.salt(Mashes.BICARBONATE, 2),
                Mashes.acid("hydrochloric", 20),
                Mashes.acid("lactic", 20));
        MashPrediction prediction = MashPrediction.of(mash);
        Map<String, Double> ions = new TreeMap<>();
        prediction.ions().forEach(amount -> ions.put(amount.symbol(), amount.mgPerL()));
        assertThat(ions.get("Ca")).isCloseTo(40.078 + 4 * 232.8 / 20, within(0.05));
        assertThat(ions.get("Mg")).isCloseTo(24.305 / 2, within(NEAR));
        assertThat(ions.get("SO4")).isCloseTo(4 * 557.9 / 20, within(0.05));
        assertThat(ions.get("Na")).isCloseTo(2 * 273.7 / 20, within(0.05));
        assertThat(ions.get("Cl")).isCloseTo(35.453, within(NEAR));
        assertThat(ions.get("K")).isZero();
        double lactateOfMalt = 3.0 / 20 / 90.078 * 89.070 * 1000;
        assertThat(ions.get("lactate")).isCloseTo(89.070 + lactateOfMalt, within(1e-3));
        double carbon = mash.liquor().carbonMmolPerL() + 2 / 84.006 * 1000 / 20;
        double bicarbonate = 1 / (1 + Math.pow(10, 6.3523 - prediction.ph()));
        assertThat(ions.get("HCO3")).isCloseTo(61.016 * carbon * bicarbonate, within(0.05));
        assertThat(prediction.ions())
                .extracting(DissolvedAmount::symbol)
                .containsExactly("Ca", "Mg", "Na", "K", "Cl", "SO4", "NO3", "HCO3", "lactate");
    }

    @Test
    void carbonDioxideThatIsLostLeavesNoBicarbonateBehind() {
        Mash mash = Mashes.porter().withModel(MashModel.standard().withCarbonDioxideLost(Estimate.exactly(1)));
        MashPrediction prediction = MashPrediction.of(mash);
        assertThat(prediction.ph()).isGreaterThan(Mashes.porter().ph());
        assertThat(prediction.ions().get(7).mgPerL()).isZero();
    }

    @Test
    void chalkDissolvesByAThirdAndNoMoreThanItsLimit() {
        Mash without = Mashes.pale();
        Mash some = without.plus(Mashes.salt(Mashes.CHALK, 10));
        Mash more = without.plus(Mashes.salt(Mashes.CHALK, 40));
        assertThat(without.chalkLimitGrams()).isEqualTo(10);
        assertThat(more.ph()).isCloseTo(some.ph(), within(1e-9));
        assertThat(some.ph() - without.ph()).isBetween(0.12, 0.22);
        double dissolvedMmol = 0.33 * 10000 / 100.086;
        MashPrediction prediction = MashPrediction.of(some);
        assertThat(prediction.contributions().get(3).meq()).isCloseTo(-2 * dissolvedMmol / 3.5, within(NEAR));
        assertThat(prediction.ions().get(0).mgPerL()).isCloseTo(dissolvedMmol * 40.078 / 20, within(NEAR));
        assertThat(prediction.influences())
                .extracting(influence -> influence.input().id())
                .contains("chalk-dissolved");
    }

    @Test
    void aLongRestAndADecoctionLowerThePh() {
        assertThat(with(OptionalDouble.empty(), Optional.of(60.0), false)).isCloseTo(5.67, within(1e-9));
        assertThat(with(OptionalDouble.empty(), Optional.of(20.0), false)).isCloseTo(5.72, within(1e-9));
        assertThat(with(OptionalDouble.empty(), Optional.empty(), true)).isCloseTo(5.62, within(1e-9));
    }

    @Test
    void aCoarseCrushLeavesThePureMashWhereItIsAndBuffersLess() {
        Mash fine = Mashes.pale();
        Mash coarse = new Mash(
                fine.grist(),
                fine.liquor(),
                List.of(Mashes.acid("lactic", 30)),
                new MashConditions(OptionalDouble.of(1.2), Optional.empty(), false),
                fine.model());
        assertThat(with(OptionalDouble.of(1.2), Optional.empty(), false)).isCloseTo(5.72, within(1e-9));
        assertThat(coarse.maltBalance().bufferingMeqPerPh(5.4)).isCloseTo(0.571 * 190, within(NEAR));
        assertThat(coarse.ph()).isLessThan(fine.plus(Mashes.acid("lactic", 30)).ph());
        assertThat(MashPrediction.of(coarse).influences())
                .extracting(influence -> influence.input().id())
                .contains("crush");
    }

    private static double with(OptionalDouble gap, Optional<Double> minutes, boolean decoction) {
        Mash pale = Mashes.pale();
        return new Mash(
                        pale.grist(),
                        pale.liquor(),
                        List.of(),
                        new MashConditions(gap, minutes.map(m -> new TimeSpan(60 * m)), decoction),
                        pale.model())
                .ph();
    }
}
