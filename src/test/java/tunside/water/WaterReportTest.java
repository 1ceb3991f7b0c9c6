package tunside.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.chemistry.CarbonateConstants;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.Ion;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Alkalinity;
import tunside.quantity.DissolvedUnit;
import tunside.quantity.EquivalentUnit;
import tunside.quantity.Hardness;
import tunside.quantity.Temperature;

class WaterReportTest {
    private static WaterReport report(
            Map<Ion, Double> ions,
            OptionalDouble titrated,
            Optional<CarbonateIons> listed,
            OptionalDouble endPoint,
            OptionalDouble ph,
            double degC,
            OptionalDouble solids) {
        return new WaterReport(
                ions,
                Map.of(),
                titrated.isPresent() ? Optional.of(new Alkalinity(titrated.getAsDouble())) : Optional.empty(),
                Optional.empty(),
                listed,
                endPoint,
                ph,
                new Temperature(degC),
                Optional.empty(),
                Optional.empty(),
                solids);
    }

    /** Calcium beside bicarbonate and carbonate listed as ions, at 20 degC. */
    private static WaterReport listed(double bicarbonate, double carbonate, OptionalDouble ph) {
        return report(
                Map.of(Ion.CALCIUM, bicarbonate / 2 + carbonate),
                OptionalDouble.empty(),
                Optional.of(new CarbonateIons(bicarbonate, carbonate)),
                OptionalDouble.empty(),
                ph,
                20,
                OptionalDouble.empty());
    }

    @ParameterizedTest(name = "{0} {1} is taken: {2}")
    @CsvSource({
        "end point pH, 3.5, true",
        "end point pH, 3.49, false",
        "end point pH, 5.5, true",
        "end point pH, 5.51, false",
        "pH of the water, 4, true",
        "pH of the water, 3.99, false",
        "pH of the water, 11, true",
        "pH of the water, 11.01, false",
        "temperature of the water, 60, true",
        "temperature of the water, 60.1, false",
        "total dissolved solids, 100000, true",
        "total dissolved solids, 100001, false",
        "Ca, 5000, true",
        "Ca, 5001, false"
    })
    void whatNoReportHasIsRefused(String what, double value, boolean taken) {
        OptionalDouble none = OptionalDouble.empty();
        OptionalDouble some = OptionalDouble.of(value);
        Runnable read = () -> report(
                Map.of(Ion.CALCIUM, what.equals("Ca") ? value : 1),
                none,
                Optional.empty(),
                what.startsWith("end") ? some : none,
                what.startsWith("pH") ? some : none,
                what.startsWith("temperature") ? value : 20,
                what.startsWith("total") ? some : none);
        if (taken) {
            read.run();
        } else {
            assertThatIllegalArgumentException().isThrownBy(read::run).withMessageContaining(what);
        }
    }

    /** A factor of three in the sulfate shows; a report that hangs together passes; one ion tells nothing. */
    @Test
    void aWaterTellsOfTheSlipInItsReport() {
        WaterReport slipped = Waters.printed(
                Waters.report(3.69, 0.86, 0.6, 0.8, 0.83, 4.0),
                EquivalentUnit.MG_PER_L_AS_CACO3,
                null,
                DissolvedUnit.MG_PER_L);
        assertThat(Waters.finding(Water.of(slipped).findings(), "water.slip").outcome())
                .isEqualTo(Outcome.CAUTION);
        Water sound = Water.of(Waters.report(1, 0.5, 1, 1, 0.5, 2));
        assertThat(Waters.finding(sound.findings(), "water.slip").outcome()).isEqualTo(Outcome.PASS);
        assertThat(Water.of(listed(3, 0, OptionalDouble.empty())).findings())
                .extracting(Finding::code)
                .doesNotContain("water.slip");
        assertThat(Waters.finding(sound.findings(), "water.alkalinity").outcome())
                .isEqualTo(Outcome.PASS);
        assertThat(Waters.finding(
                                Water.of(report(
                                                Map.of(Ion.CALCIUM, 1.0),
                                                OptionalDouble.of(2),
                                                Optional.empty(),
                                                OptionalDouble.empty(),
                                                OptionalDouble.of(7.5),
                                                20,
                                                OptionalDouble.empty()))
                                        .findings(),
                                "water.alkalinity")
                        .outcome())
                .isEqualTo(Outcome.NOTE);
    }

    @Test
    void whatNoTitrationHasIsRefused() {
        AlkalinityTitration usual = new AlkalinityTitration(100, 5, 0.02, 4.5);
        assertThat(usual.alkalinityMeqPerL()).isCloseTo(1, within(1e-12));
        assertThat(usual.lowAlkalinityMeqPerL(5)).isCloseTo(1, within(1e-12));
        refused("sample", () -> new AlkalinityTitration(0.9, 5, 0.02, 4.5));
        refused("acid", () -> new AlkalinityTitration(100, -0.1, 0.02, 4.5));
        refused("strength of the acid", () -> new AlkalinityTitration(100, 5, 0, 4.5));
        refused("end point", () -> new AlkalinityTitration(100, 5, 0.02, 3.4));
        refused("second end point", () -> usual.lowAlkalinityMeqPerL(4.9));
        refused("HCO3", () -> new CarbonateIons(-1, 0));
        refused("CO3", () -> new CarbonateIons(0, -1));
    }

    private static void refused(String what, Runnable read) {
        assertThatIllegalArgumentException().isThrownBy(read::run).withMessageContaining(what);
    }

    /** At 20 degC, pKw 14.167, ionic strength 0.003 * 2.5: gamma 0.911 by hand; hydroxide 68.1 and hydrogen ion 100 umol/L. */
    @ParameterizedTest(name = "pH {0}: {1} mEq/L more than the ions")
    @CsvSource({"10, 0.0747", "4, -0.1097", "7.5, 0.0002"})
    void hydroxideAndHydrogenIonCountInAnAlkalinityOfIons(double ph, double more) {
        WaterReport report = listed(5, 0, OptionalDouble.of(ph));
        assertThat(report.alkalinityMeqPerL().getAsDouble()).isCloseTo(5 + more, within(0.0005));
    }

    /** The water read from bicarbonate beside carbonate holds both: constants and activities are those of the balance. */
    @Test
    void aReportOfBicarbonateAndCarbonateComesOutAgain() {
        WaterReport report = listed(3, 0.3, OptionalDouble.empty());
        Water water = Water.of(report);
        CarbonateState state = CarbonateState.closed(water.solution(), water.temperature());
        assertThat(1000 * state.bicarbonateMolPerKg()).isCloseTo(3, within(0.06));
        assertThat(1000 * state.carbonateMolPerKg()).isCloseTo(0.3, within(0.03));
        // gammas by hand at ionic strength 0.0057: 10^-0.0346 and four times that exponent
        assertThat(water.ph())
                .isCloseTo(CarbonateConstants.pK2(Waters.ROOM) - 1 - 3 * 0.0346, within(0.01))
                .isEqualTo(report.statedPh(), within(1e-6));
        assertThat(report.phIsStated()).isTrue();
        Finding ph = Waters.finding(water.findings(), "water.ph-of-carbonate");
        assertThat(ph.outcome()).isEqualTo(Outcome.NOTE);
        assertThat(ph.observed().getAsDouble()).isCloseTo(water.ph(), within(1e-6));
        assertThat(Waters.finding(water.findings(), "water.bicarbonate").outcome())
                .isEqualTo(Outcome.PASS);
        assertThat(water.alkalinityMeqPerL())
                .isCloseTo(report.alkalinityMeqPerL().getAsDouble(), within(1e-9))
                .isBetween(3.61, 3.63);
    }

    @Test
    void bicarbonateWithoutCarbonateSaysNothingOfThePh() {
        WaterReport report = listed(3, 0, OptionalDouble.empty());
        assertThat(report.phIsStated()).isFalse();
        assertThat(report.statedPh()).isEqualTo(7.5);
        assertThat(Waters.finding(Water.of(report).findings(), "water.ph").outcome())
                .isEqualTo(Outcome.NOTE);
        assertThat(new CarbonateIons(0, 1).ph(Waters.ROOM, 0)).isEmpty();
        WaterReport stated = listed(3, 0.3, OptionalDouble.of(8));
        assertThat(stated.phIsStated()).isTrue();
        assertThat(stated.statedPh()).isEqualTo(8);
        assertThat(Waters.finding(Water.of(stated).findings(), "water.ph").outcome())
                .isEqualTo(Outcome.PASS);
    }

    @Test
    void moreAlkalinityGoesToWhereItStands() {
        WaterReport ofIons = listed(3, 0.3, OptionalDouble.empty());
        assertThat(ofIons.withMoreAlkalinity(0.5).carbonateIons()).contains(new CarbonateIons(3.5, 0.3));
        assertThat(ofIons.withMoreAlkalinity(-4).carbonateIons()).contains(new CarbonateIons(0, 0.3));
        assertThat(ofIons.withMoreAlkalinity(0.5).alkalinity()).isEmpty();
        WaterReport titrated = Waters.report(1, 0.5, 1, 1, 0.5, 2);
        assertThat(titrated.withMoreAlkalinity(0.5).alkalinityMeqPerL()).hasValue(2.5);
        WaterReport both = report(
                Map.of(Ion.CALCIUM, 1.0),
                OptionalDouble.of(2),
                Optional.of(new CarbonateIons(2, 0)),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                20,
                OptionalDouble.empty());
        assertThat(both.withMoreAlkalinity(1).alkalinityMeqPerL()).hasValue(3);
        assertThat(both.withMoreAlkalinity(1).carbonateIons()).contains(new CarbonateIons(2, 0));
        WaterReport none = report(
                Map.of(Ion.CALCIUM, 1.0),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                20,
                OptionalDouble.empty());
        assertThat(none.alkalinityMeqPerL()).isEmpty();
        assertThat(none.withMoreAlkalinity(1).carbonateIons()).contains(new CarbonateIons(1, 0));
    }

    @ParameterizedTest(name = "{0} against {1} mEq/L of the ions: {2}")
    @CsvSource({"1, 1.09, PASS", "1, 1.11, CAUTION", "1, 0.89, CAUTION", "4, 4.19, PASS", "4, 4.21, CAUTION"})
    void anAlkalinityIsHeldAgainstTheBicarbonateBesideIt(double stated, double ofIons, Outcome outcome) {
        WaterReport report = report(
                Map.of(Ion.CALCIUM, 1.0),
                OptionalDouble.of(stated),
                Optional.of(new CarbonateIons(ofIons, 0)),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                20,
                OptionalDouble.empty());
        Finding finding = Waters.finding(WaterChecks.of(report), "water.alkalinity-against-bicarbonate");
        assertThat(finding.outcome()).isEqualTo(outcome);
        assertThat(finding.observed()).hasValue(stated);
        assertThat(finding.expected()).hasValue(ofIons);
    }

    /** With 1.2 mEq/L of anions from 0.45 to 0.75 mg/L for each uS/cm, with 5 mEq/L from 0.55 to 0.70 (SM-1030E). */
    @ParameterizedTest(name = "{0} mEq/L of alkalinity, {1} mg/L for each uS/cm: {2}")
    @CsvSource({
        "0.8, 0.44, CAUTION, 0.45",
        "0.8, 0.46, PASS, 0.45",
        "0.8, 0.74, PASS, 0.75",
        "0.8, 0.76, CAUTION, 0.75",
        "4.6, 0.54, CAUTION, 0.55",
        "4.6, 0.56, PASS, 0.55",
        "4.6, 0.69, PASS, 0.7",
        "4.6, 0.71, CAUTION, 0.7"
    })
    void solidsAreHeldAgainstTheConductivity(double alkalinity, double ratio, Outcome outcome, double limit) {
        WaterReport base = Waters.report(0.3, 0.1, 0.4, 0.2, 0.1, alkalinity);
        Finding finding = Waters.finding(
                WaterChecks.of(Waters.with(base, null, 200.0, 200 * ratio)), "water.solids-against-conductivity");
        assertThat(finding.outcome()).isEqualTo(outcome);
        assertThat(finding.observed().getAsDouble()).isCloseTo(ratio, within(1e-12));
        assertThat(finding.expected()).hasValue(limit);
    }

    @Test
    void aCheckNeedsItsNumbers() {
        WaterReport base = Waters.report(1.5, 0.5, 1, 1, 0.5, 3);
        assertThat(codes(base)).containsExactly("water.legal-limit");
        assertThat(codes(Waters.with(base, 4.0, 500.0, 300.0)))
                .containsExactly(
                        "water.hardness",
                        "water.conductivity",
                        "water.dissolved-solids",
                        "water.solids-against-conductivity",
                        "water.legal-limit");
        assertThat(codes(Waters.with(base, null, 0.0, 300.0)))
                .containsExactly("water.conductivity", "water.dissolved-solids", "water.legal-limit");
        WaterReport empty = Waters.with(Waters.report(0, 0, 0, 0, 0, 0), null, 5.0, 3.0);
        assertThat(codes(empty)).containsExactly("water.solids-against-conductivity", "water.legal-limit");
        Map<Ion, Double> ions = new EnumMap<>(base.mmolPerL());
        ions.remove(Ion.MAGNESIUM);
        assertThat(codes(Waters.with(base.withIons(ions), 4.0, 500.0, 300.0)))
                .containsExactly("water.solids-against-conductivity", "water.legal-limit");
    }

    private static List<String> codes(WaterReport report) {
        return WaterChecks.of(report).stream().map(Finding::code).toList();
    }

    @ParameterizedTest(name = "{0} against {1} mEq/L: {2}")
    @CsvSource({"2, 1.81, PASS", "2, 1.79, CAUTION", "2, 2.19, PASS", "2, 2.21, CAUTION"})
    void softWaterHasALimitOfHardnessInMilliequivalents(double stated, double ofIons, Outcome outcome) {
        WaterReport report = Waters.with(Waters.report(ofIons / 2 - 0.2, 0.2, 1, 1, 0.5, 1), stated, null, null);
        Finding finding = Waters.finding(WaterChecks.of(report), "water.hardness");
        assertThat(finding.outcome()).isEqualTo(outcome);
        assertThat(finding.observed()).hasValue(stated);
        assertThat(finding.expected().getAsDouble()).isCloseTo(ofIons, within(1e-12));
        assertThat(report.hardness()).contains(new Hardness(stated));
    }

    /** 2500 uS/cm at 20 degC are 2790 at 25 degC (EU-2020-2184, EN-27888). */
    @Test
    void theLawsConductivityIsThatAtTwentyDegrees() {
        WaterReport base = Waters.report(1, 0.5, 1, 1, 1, 1);
        assertThat(legal(Waters.with(base, null, 2789.0, null)).outcome()).isEqualTo(Outcome.PASS);
        Finding beyond = legal(Waters.with(base, null, 2791.0, null));
        assertThat(beyond.outcome()).isEqualTo(Outcome.NOTE);
        assertThat(beyond.subject()).isEqualTo("conductivity (European Union)");
        assertThat(beyond.observed().getAsDouble()).isCloseTo(2791 / 1.116, within(1e-9));
        assertThat(beyond.expected()).hasValue(2500);
        assertThat(legal(Waters.with(base, null, null, 500.0)).outcome()).isEqualTo(Outcome.PASS);
        assertThat(legal(Waters.with(base, null, null, 501.0)).subject()).isEqualTo("dissolved solids (United States)");
        Finding alkaline = legal(base.withPh(9.6));
        assertThat(alkaline.expected()).hasValue(9.5);
        assertThat(legal(base.withPh(9.5)).outcome()).isEqualTo(Outcome.PASS);
        assertThat(legal(base.withPh(6.5)).outcome()).isEqualTo(Outcome.PASS);
    }

    private static Finding legal(WaterReport report) {
        return Waters.finding(WaterChecks.of(report), "water.legal-limit");
    }

    @Test
    void aWaterThatCanDropChalkIsNoted() {
        Finding soft = WaterChecks.calcite(WaterProfile.of(Waters.moderate(), Waters.ROOM));
        assertThat(soft.outcome()).isEqualTo(Outcome.PASS);
        WaterProfile hot = WaterProfile.of(Waters.moderate(), new Temperature(80));
        Finding dropping = WaterChecks.calcite(hot);
        assertThat(dropping.outcome()).isEqualTo(Outcome.NOTE);
        assertThat(dropping.observed()).hasValue(hot.calciteIndex());
        assertThat(dropping.expected()).hasValue(0.3);
        Finding none = WaterChecks.calcite(WaterProfile.of(Water.distilled(), Waters.ROOM));
        assertThat(none.outcome()).isEqualTo(Outcome.PASS);
        assertThat(none.observed()).isEmpty();
    }

    @Test
    void limitsBeyondTheTableAreItsLastAndUnknownOnesAreRefused() {
        assertThat(WaterLimits.of("solids-per-conductivity", 2).high()).isEqualTo(0.75);
        assertThat(WaterLimits.of("solids-per-conductivity", 5000).high()).isEqualTo(0.7);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> WaterLimits.of("taste", 1))
                .withMessageContaining("no 'taste'");
    }

    /** By hand: 126.4 y² with y 0.9657 at ionic strength 0.001, and 208 y² with 0.9430 at 0.003. */
    @Test
    void conductivityIsThatOfTheIonsTimesTheirActivitySquared() {
        assertThat(Conductivities.microsiemensPerCm(Map.of(Ion.SODIUM, 1.0, Ion.CHLORIDE, 1.0), 0))
                .isCloseTo(117.87, within(0.01));
        assertThat(Conductivities.microsiemensPerCm(Map.of(Ion.CALCIUM, 1.0), 2))
                .isCloseTo(184.95, within(0.02));
        assertThat(Conductivities.microsiemensPerCm(Map.of(Ion.SODIUM, 1.0, Ion.CHLORIDE, 1.0), -1))
                .isCloseTo(117.87, within(0.01));
    }
}
