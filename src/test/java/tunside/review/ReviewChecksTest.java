package tunside.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tunside.review.Records.brew;
import static tunside.review.Records.part;
import static tunside.review.Records.tap;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.Estimate;
import tunside.mash.Malt;

/** The limits of a record's checks, on both sides. */
class ReviewChecksTest {
    private static final LearntEstimate NONE = learnt(0, 0.1, 0, 0.05);

    private static LearntEstimate learnt(double before, double uncertainty, double after, double left) {
        return new LearntEstimate(new Estimate(before, uncertainty), new Estimate(after, left));
    }

    private static ReviewedBrew reviewed(Standing standing, double studentised, int reading, Double... published) {
        return new ReviewedBrew(
                brew("the brew", tap(part(Malt.of("pale"), 5)), 5.6),
                new Estimate(5.6, 0.1),
                List.of(published),
                new Estimate(5.6, 0.1),
                studentised,
                reading,
                standing,
                0.1,
                List.of());
    }

    private static ReviewedBrew counted(double studentised) {
        return reviewed(Standing.COUNTED, studentised, 0, 5.6);
    }

    private static List<Finding> checks(List<ReviewedBrew> brews, LearntEstimate bias, LearntEstimate buffering) {
        return ReviewChecks.of(brews, bias, buffering, 1.0);
    }

    private static Finding finding(List<Finding> findings, String code) {
        return findings.stream()
                .filter(found -> found.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest(name = "{0} at {1} deviations: {2}")
    @CsvSource({
        "COUNTED, 3.0, PASS, 3.0",
        "COUNTED, -3.0, PASS, -3.0",
        "COUNTED, 3.01, CAUTION, 3.0",
        "COUNTED, -3.01, CAUTION, -3.0",
        "COUNTED, 1.26, PASS, 1.3",
        "COUNTED, -0.01, PASS, 0.0",
        "FAR_FROM_OTHERS, 2.9, NOTE, 2.9",
        "FAR_FROM_OTHERS, -4.44, CAUTION, -4.4"
    })
    void aBrewIsHeldAgainstThreeDeviations(Standing standing, double deviations, Outcome outcome, double shown) {
        Finding found = finding(checks(List.of(reviewed(standing, deviations, 0, 5.6)), NONE, NONE), "review.brew");
        assertThat(found.outcome()).isEqualTo(outcome);
        assertThat(found.observed()).hasValue(shown);
        assertThat(found.expected()).hasValue(3);
        assertThat(found.pointer()).isEqualTo("/brews/0");
        assertThat(found.subject()).isEqualTo("the brew");
    }

    @Test
    void aDoseIsPointedTo() {
        List<Finding> findings =
                checks(List.of(counted(0), reviewed(Standing.FAR_FROM_OTHERS, 4, 2, 5.6, 5.5, 5.4)), NONE, NONE);
        assertThat(finding(findings, "review.brew-dose").pointer()).isEqualTo("/brews/1/doses/1");
    }

    @ParameterizedTest(name = "{0} and {1}: {2}, {3} against {4}")
    @CsvSource({
        "3.96, 3.9, /mash, 4.0, 4",
        "3.87, 5, /mash, 3.9, 4",
        "5.6, 3.14, /doses/0, 3.1, 4",
        "4.0, 7.62, /doses/0, 7.6, 7.5"
    })
    void theFirstReadingBeyondTheModelIsNamed(double first, double second, String place, double shown, double nearest) {
        Finding found = finding(
                checks(List.of(reviewed(Standing.BEYOND_MODEL, 0, 0, first, second)), NONE, NONE),
                "review.beyond-model");
        assertThat(found.outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(found.pointer()).isEqualTo("/brews/0" + place);
        assertThat(found.observed().getAsDouble()).isCloseTo(shown, within(1e-12));
        assertThat(found.expected()).hasValue(nearest);
    }

    @ParameterizedTest(name = "{0} counted, {1} set aside: {2}, {3}")
    @CsvSource({"0, 1, CAUTION, NOTE", "1, 0, NOTE, PASS", "2, 1, NOTE, NOTE", "3, 0, PASS, PASS", "3, 2, PASS, NOTE"})
    void whatIsSetAsideIsCounted(int counts, int aside, Outcome enough, Outcome setAside) {
        List<ReviewedBrew> brews = new ArrayList<>(Collections.nCopies(counts, counted(0)));
        brews.addAll(Collections.nCopies(aside, reviewed(Standing.UNEXPLAINABLE, 9, 0, 5.6)));
        List<Finding> findings = checks(brews, NONE, NONE);
        assertThat(finding(findings, "review.brews").outcome()).isEqualTo(enough);
        assertThat(finding(findings, "review.brews").observed()).hasValue(counts);
        assertThat(finding(findings, "review.brews").expected()).hasValue(3);
        assertThat(finding(findings, "review.set-aside").outcome()).isEqualTo(setAside);
        assertThat(finding(findings, "review.set-aside").observed()).hasValue(aside);
    }

    @ParameterizedTest(name = "a counted brew at {0} deviations: {1}")
    @CsvSource({"3.0, PASS", "3.1, CAUTION", "-3.1, CAUTION"})
    void aCountedBrewThatIsFarIsACaution(double deviations, Outcome outcome) {
        assertThat(finding(checks(List.of(counted(0), counted(deviations)), NONE, NONE), "review.set-aside")
                        .outcome())
                .isEqualTo(outcome);
    }

    @ParameterizedTest(name = "from {0} to {1}: {2}")
    @CsvSource({
        "0, 0.199, PASS, 0.2",
        "0, 0.201, CAUTION, 0.2",
        "0, -0.201, CAUTION, -0.2",
        "0.1, 0.299, PASS, 0.3",
        "0.1, 0.301, CAUTION, 0.3",
        "0.1, -0.101, CAUTION, -0.1"
    })
    void aBiasIsUsualWithinTwoDeviationsOfThePublished(double from, double to, Outcome outcome, double shown) {
        Finding bias = finding(checks(List.of(counted(0)), learnt(from, 0.1, to, 0.05), NONE), "review.household-bias");
        assertThat(bias.outcome()).isEqualTo(outcome);
        assertThat(bias.observed().getAsDouble()).isCloseTo(shown, within(1e-12));
        assertThat(bias.expected().getAsDouble()).isCloseTo(0.2, within(1e-12));
    }

    /** Four fifths of the published uncertainty left is hardly anything learnt; two deviations of 0.2 are a factor of 1.49. */
    @ParameterizedTest(name = "{0} left, logarithm {1} from {2}: {3}")
    @CsvSource({
        "0.161, 0.9, 0, NOTE, 2.46",
        "0.159, 0.39, 0, PASS, 1.48",
        "0.159, 0.41, 0, CAUTION, 1.51",
        "0.159, -0.41, 0, CAUTION, 0.66",
        "0.159, 0.49, 0.1, PASS, 1.63",
        "0.159, 0.51, 0.1, CAUTION, 1.67"
    })
    void theBufferingIsToldOnlyWhereItWasLearnt(
            double left, double logarithm, double from, Outcome outcome, double factor) {
        Finding found =
                finding(checks(List.of(counted(0)), NONE, learnt(from, 0.2, logarithm, left)), "review.buffering");
        assertThat(found.outcome()).isEqualTo(outcome);
        assertThat(found.observed().getAsDouble()).isCloseTo(factor, within(1e-12));
        assertThat(found.expected().getAsDouble()).isCloseTo(1.49, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"1.5, PASS, 1.5", "1.51, CAUTION, 1.51", "0.444, PASS, 0.44"})
    void fiveBrewsTellOfTheirScatter(double scatter, Outcome outcome, double shown) {
        List<ReviewedBrew> five = Collections.nCopies(5, counted(0));
        Finding found = finding(ReviewChecks.of(five, NONE, NONE, scatter), "review.scatter");
        assertThat(found.outcome()).isEqualTo(outcome);
        assertThat(found.observed().getAsDouble()).isCloseTo(shown, within(1e-12));
        assertThat(found.expected()).hasValue(1.5);
        assertThat(ReviewChecks.of(five.subList(0, 4), NONE, NONE, scatter))
                .extracting(Finding::code)
                .doesNotContain("review.scatter");
    }
}
