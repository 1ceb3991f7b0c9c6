package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Interval90;
import tunside.quantity.Strength;
import tunside.quantity.TimeSpan;
import tunside.quantity.Volume;
import tunside.reference.Table;

class MashChecksTest {
    private static final Set<String> WORDED = worded();

    private static Set<String> worded() {
        Set<String> keys = new HashSet<>();
        Table.read("checks-mash.csv")
                .rows()
                .forEach(row ->
                        keys.add(row.text("code") + " " + row.text("outcome").toUpperCase(Locale.ROOT)));
        return keys;
    }

    private static Finding find(List<Finding> findings, String code) {
        findings.forEach(finding -> assertThat(WORDED).contains(finding.code() + " " + finding.outcome()));
        return findings.stream()
                .filter(finding -> finding.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private static Finding ofMalt(Malt malt, String code) {
        return find(MashChecks.of(malt), code);
    }

    private static Finding ofMash(Mash mash, String code) {
        return find(MashChecks.of(mash, MashPrediction.of(mash)), code);
    }

    private static void is(Finding finding, Outcome outcome, String pointer, double observed, double expected) {
        assertThat(finding.outcome()).as(finding.toString()).isEqualTo(outcome);
        assertThat(finding.pointer()).isEqualTo(pointer);
        assertThat(finding.observed().orElseThrow()).isCloseTo(observed, within(1e-9));
        assertThat(finding.expected().orElseThrow()).isCloseTo(expected, within(1e-9));
    }

    private static MeasuredMalt measured(Double ph, BufferCurve curve, Double acidity) {
        return new MeasuredMalt(
                Optional.ofNullable(ph).map(value -> new Estimate(value, 0.04)),
                OptionalDouble.empty(),
                Optional.ofNullable(curve),
                Optional.ofNullable(acidity).map(value -> new Estimate(value, 2)));
    }

    @Test
    void evidenceIsMeasuredClassOrNone() {
        assertThat(ofMalt(Malt.of("pale"), "mash.malt-evidence").outcome()).isEqualTo(Outcome.NOTE);
        assertThat(ofMalt(Malt.of("oats"), "mash.malt-evidence").outcome()).isEqualTo(Outcome.CAUTION);
        Finding own = ofMalt(Malt.of("oats").with(measured(5.9, null, null)), "mash.malt-evidence");
        assertThat(own.outcome()).isEqualTo(Outcome.PASS);
        assertThat(own.subject()).isEqualTo("oats");
        assertThat(ofMalt(Malt.of("pale").with(measured(null, null, 5.0)), "mash.malt-evidence")
                        .outcome())
                .isEqualTo(Outcome.PASS);
        assertThat(ofMalt(Malt.of("pale").with(measured(null, BufferCurve.linear(40, 0.1), null)), "mash.malt-evidence")
                        .outcome())
                .isEqualTo(Outcome.NOTE);
    }

    @ParameterizedTest
    @CsvSource({"25, PASS, 25", "400, PASS, 25", "24.9, NOTE, 25", "400.1, NOTE, 400"})
    void colourOfCaramelLiesAmongTheMeasured(double ebc, Outcome outcome, double limit) {
        is(ofMalt(Malt.of("caramel", ebc), "mash.malt-colour"), outcome, "/colour", ebc, limit);
    }

    @Test
    void colourIsAskedOfCaramelOnlyAndOnlyWithoutAMeasurement() {
        assertThat(ofMalt(Malt.of("caramel"), "mash.malt-colour").outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(MashChecks.of(Malt.of("pale"))).extracting(Finding::code).containsExactly("mash.malt-evidence");
        assertThat(MashChecks.of(Malt.of("caramel").with(measured(4.9, null, null))))
                .extracting(Finding::code)
                .containsExactly("mash.malt-evidence", "mash.malt-measured-ph");
    }

    @ParameterizedTest
    @CsvSource({"5.72, PASS", "5.41, PASS", "6.03, PASS", "5.40, CAUTION", "6.04, CAUTION"})
    void aMeasuredPhFarFromItsClassIsDoubted(double ph, Outcome outcome) {
        is(
                ofMalt(Malt.of("pale").with(measured(ph, null, null)), "mash.malt-measured-ph"),
                outcome,
                "/measured/distilledWaterPh",
                ph,
                5.72);
    }

    @ParameterizedTest
    @CsvSource({"38, PASS", "19, PASS", "76, PASS", "18.9, CAUTION", "76.1, CAUTION"})
    void aMeasuredBufferingFarFromItsClassIsDoubted(double buffering, Outcome outcome) {
        Malt malt = Malt.of("pale").with(measured(null, BufferCurve.linear(buffering, 0.1), null));
        is(ofMalt(malt, "mash.malt-measured-buffering"), outcome, "/measured", buffering, 38);
    }

    @ParameterizedTest
    @CsvSource({"40, PASS", "57.7, PASS", "22.3, PASS", "57.8, CAUTION", "22.2, CAUTION"})
    void anAcidityIsHeldAgainstPhAndBuffering(double acidity, Outcome outcome) {
        // expected 50 * (5.7 - 4.9) = 40, doubted beyond 3 * sqrt(2^2 + (0.13 * 40)^2 + (50 * 0.04)^2) = 17.77
        Malt malt = Malt.of("caramel", 120).with(measured(4.9, BufferCurve.linear(50, 0.13), acidity));
        is(
                ofMalt(malt, "mash.malt-acidity-agrees"),
                outcome,
                "/measured/acidityToPh57MeqPerKg",
                acidity,
                50 * (5.7 - 4.9));
    }

    @ParameterizedTest
    @CsvSource({"2, PASS, 4", "4, PASS, 4", "1.9, CAUTION, 2", "4.1, CAUTION, 4"})
    void lacticAcidOfAcidulatedMaltIsTwoToFourPercent(double percent, Outcome outcome, double limit) {
        Malt malt = new Malt(
                MaltClasses.get("acidulated"),
                Optional.empty(),
                MeasuredMalt.NOTHING,
                Optional.of(new Estimate(percent, 0.2)),
                Optional.empty());
        is(ofMalt(malt, "mash.malt-lactic-acid"), outcome, "/lacticAcidPercent", percent, limit);
    }

    @ParameterizedTest
    @CsvSource({
        "2, PASS, 5",
        "5, PASS, 5",
        "1.99, NOTE, 2",
        "1.5, NOTE, 2",
        "5.01, NOTE, 5",
        "8, NOTE, 5",
        "1.49, CAUTION, 2",
        "8.01, CAUTION, 5"
    })
    void theLiquorRatioIsThatOfAMash(double ratio, Outcome outcome, double limit) {
        Mash mash = Mash.of(new Grist(List.of(Mashes.part(Malt.of("pale"), 1))), Liquor.distilled(new Volume(ratio)));
        is(ofMash(mash, "mash.liquor-ratio"), outcome, "/liquor/volume", ratio, limit);
    }

    @ParameterizedTest
    @CsvSource({"0, PASS", "5.2, PASS", "5.4, NOTE", "7.9, NOTE", "8.2, CAUTION"})
    void theAlkalinityIsThatOfTheJars(double alkalinity, Outcome outcome) {
        Liquor liquor = Liquor.titrated(new Volume(4), alkalinity, 4.3, 8.3, 0, 0);
        Mash mash = Mash.of(new Grist(List.of(Mashes.part(Malt.of("pale"), 1))), liquor);
        is(ofMash(mash, "mash.alkalinity"), outcome, "/liquor", liquor.alkalinityMeqPerL(), 5.3);
    }

    @ParameterizedTest
    @CsvSource({"5, PASS", "5.1, NOTE", "10, NOTE", "10.1, CAUTION"})
    void acidulatedMaltIsAFewPercent(double percent, Outcome outcome) {
        Mash mash = Mash.of(
                new Grist(List.of(
                        Mashes.part(Malt.of("pale"), 100 - percent), Mashes.part(Malt.of("acidulated"), percent))),
                Liquor.distilled(new Volume(400)));
        is(ofMash(mash, "mash.acidulated-share"), outcome, "/grist", percent, 5);
    }

    @Test
    void whatIsNotThereIsNotChecked() {
        assertThat(MashChecks.of(Mashes.pale(), MashPrediction.of(Mashes.pale())))
                .extracting(Finding::code)
                .containsExactly(
                        "mash.liquor-ratio",
                        "mash.alkalinity",
                        "mash.rest-time",
                        "mash.predicted-range",
                        "mash.model-reach",
                        "mash.certainty");
        Mash salted = Mashes.pale().plus(Mashes.salt(Mashes.GYPSUM, 3));
        assertThat(MashChecks.of(salted, MashPrediction.of(salted)))
                .extracting(Finding::code)
                .doesNotContain("mash.chalk");
    }

    @ParameterizedTest
    @CsvSource({"10, NOTE, 500", "10.1, CAUTION, 505", "2, NOTE, 100"})
    void chalkIsToldOf(double grams, Outcome outcome, double mgPerL) {
        Mash mash = Mashes.pale().plus(Mashes.salt(Mashes.CHALK, grams));
        is(ofMash(mash, "mash.chalk"), outcome, "/additions", mgPerL, 500);
    }

    @ParameterizedTest
    @CsvSource({
        "hydrochloric, 24.9, PASS, 25",
        "hydrochloric, 25, STOP, 25",
        "hydrochloric, 37, STOP, 25",
        "sulfuric, 14.9, PASS, 15",
        "sulfuric, 15, STOP, 15"
    })
    void corrosiveMineralAcidNeverGoesNeatIntoAMash(String acid, double percent, Outcome outcome, double limit) {
        AcidProduct product = AcidProduct.of(Acids.get(acid), Strength.percent(percent));
        is(find(MashChecks.of(product), "mash.acid-neat"), outcome, "/strength", percent, limit);
        assertThat(MashChecks.of(AcidProduct.of(Acids.get("lactic"), Strength.percent(88))))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"20, PASS", "19, CAUTION", "60, PASS"})
    void theSampleIsTakenAfterTwentyMinutes(double minutes, Outcome outcome) {
        is(ofMash(conditions(OptionalDouble.empty(), minutes), "mash.rest-time"), outcome, "/rest", minutes, 20);
    }

    @Test
    void anUnstatedTimeIsNoted() {
        Finding finding = ofMash(Mashes.pale(), "mash.rest-time");
        assertThat(finding.outcome()).isEqualTo(Outcome.NOTE);
        assertThat(finding.pointer()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0, PASS", "1.2, PASS", "1.21, CAUTION"})
    void theMillGapLiesAmongTheMeasured(double gap, Outcome outcome) {
        is(ofMash(conditions(OptionalDouble.of(gap), 30), "mash.mill-gap"), outcome, "/millGapMm", gap, 1.2);
    }

    private static Mash conditions(OptionalDouble gap, double minutes) {
        Mash pale = Mashes.pale();
        return new Mash(
                pale.grist(),
                pale.liquor(),
                List.of(),
                new MashConditions(gap, Optional.of(new TimeSpan(60 * minutes)), false),
                pale.model());
    }

    @ParameterizedTest
    @CsvSource({
        "5.45, PASS, 5.7, PASS, 6.2",
        "5.19, CAUTION, 5.2, PASS, 6.2",
        "5.71, CAUTION, 5.7, PASS, 6.2",
        "4.99, CAUTION, 5.2, CAUTION, 5.0",
        "6.21, CAUTION, 5.7, CAUTION, 6.2"
    })
    void theAnswerIsHeldAgainstTheRangeAndTheModel(
            double ph, Outcome range, double rangeLimit, Outcome reach, double reachLimit) {
        Mash mash = Mash.of(
                new Grist(List.of(Mashes.part(Mashes.measured("pale", ph, 38), 1))), Liquor.distilled(new Volume(4)));
        is(ofMash(mash, "mash.predicted-range"), range, "", ph, rangeLimit);
        is(ofMash(mash, "mash.model-reach"), reach, "", ph, reachLimit);
    }

    @Test
    void aWideIntervalIsNoted() {
        MashPrediction pale = MashPrediction.of(Mashes.pale());
        is(
                ofMash(Mashes.pale(), "mash.certainty"),
                Outcome.NOTE,
                "",
                Interval90.HALF_WIDTH * pale.standardUncertainty(),
                0.15);
        Mash measured = Mash.of(
                new Grist(List.of(Mashes.part(Mashes.measured("pale", 5.5, 38), 1))), Liquor.distilled(new Volume(4)));
        assertThat(ofMash(measured, "mash.certainty").outcome()).isEqualTo(Outcome.PASS);
    }

    @Test
    void onlyPhFromFourToSevenAndAHalfIsAnAnswer() {
        for (double ph : new double[] {4, 5.5, 7.5}) {
            assertThat(at(ph).isWithinReach()).isTrue();
        }
        for (double ph : new double[] {3.99, 7.51}) {
            assertThat(at(ph).isWithinReach()).isFalse();
        }
    }

    private static MashPrediction at(double ph) {
        return new MashPrediction(ph, 0.1, List.of(), List.of(), 1, 0, 0, List.of(), List.of());
    }
}
