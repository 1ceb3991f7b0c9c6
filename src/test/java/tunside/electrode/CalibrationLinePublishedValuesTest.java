package tunside.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.quantity.Potential;

class CalibrationLinePublishedValuesTest {
    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/published/electrode/calibration-lines.csv", useHeadersInDisplayName = true)
    void twoBuffersGiveTheLine(
            String name,
            String bufferPh,
            String potentialMv,
            double slopeMvPerPh,
            double percent,
            double offsetMv,
            double zeroPointPh,
            Verdict verdict,
            double tolerance,
            String source) {
        double[] ph = numbers(bufferPh);
        double[] potentials = numbers(potentialMv);
        CalibrationEvaluation evaluation =
                CalibrationEvaluation.of(CalibrationSession.ofPotentials(IntStream.range(0, ph.length)
                        .mapToObj(i -> Sessions.own(ph[i], potentials[i]))
                        .toList()));
        CalibrationLine line = evaluation.line();
        assertThat(line.slopeMvPerPh()).as(source).isCloseTo(slopeMvPerPh, within(tolerance));
        assertThat(line.slopePercent()).isCloseTo(percent, within(tolerance));
        assertThat(line.offsetMv()).isCloseTo(offsetMv, within(tolerance));
        assertThat(line.zeroPoint().value()).isCloseTo(zeroPointPh, within(tolerance));
        assertThat(evaluation.verdict()).isEqualTo(verdict);
    }

    private static double[] numbers(String text) {
        return Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    /** DERIVED: 4.005 at 170 mV, 6.865 at 5 mV, sample at 90 mV, u(buffer) 0.01, u(E) 0.5 mV. */
    @Test
    void theWorkedCaseReadsItsSampleWithItsUncertainty() {
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(
                Sessions.potentials(Sessions.reading("iupac-phthalate", 170), Sessions.reading("iupac-phosphate", 5)));
        CalibratedPh read = evaluation
                .calibration()
                .orElseThrow()
                .read(new Potential(90), Sessions.AT_25, ReadingUncertainty.USUAL);
        assertThat(read.ph()).isCloseTo(5.391667, within(1e-6));
        assertThat(read.fromLineAndPotential()).isCloseTo(0.012757, within(1e-6));
        assertThat(evaluation.line().slopePercentUncertainty()).isCloseTo(0.638, within(0.0005));
        assertThat(evaluation.line().offsetMv()).isCloseTo(-2.78846, within(1e-5));
        assertThat(evaluation.line().slopeMvPerPh()).isCloseTo(57.6923, within(1e-4));
        assertThat(evaluation.line().largestChiSquared()).isZero();
        assertThat(evaluation.line().consistent()).isTrue();
    }

    /** DERIVED: three buffers. */
    @Test
    void threeBuffersGiveTheLineItsResidualsAndItsSegments() {
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(Sessions.potentials(
                Sessions.reading("iupac-phthalate", 170),
                Sessions.reading("iupac-phosphate", 5),
                Sessions.reading("iupac-borax", -129.5)));
        assertThat(evaluation.line().slopeMvPerPh()).isCloseTo(57.867357, within(1e-6));
        assertThat(evaluation.line().slopePercent()).isCloseTo(97.8161, within(5e-5));
        assertThat(evaluation.line().residualMv(0)).isCloseTo(-0.1547, within(5e-5));
        assertThat(evaluation.line().residualMv(1)).isCloseTo(0.3459, within(5e-5));
        assertThat(evaluation.line().residualMv(2)).isCloseTo(-0.1912, within(5e-5));
        assertThat(evaluation.line().errorPh(1)).isCloseTo(-0.3459 / 57.867, within(1e-5));
        assertThat(evaluation.line().largestErrorPh()).isCloseTo(0.3459 / 57.867, within(1e-5));
        List<SegmentSlope> segments = evaluation.segments();
        assertThat(segments).hasSize(2);
        assertThat(segments.get(0).percent()).isCloseTo(97.520, within(5e-4));
        assertThat(segments.get(1).percent()).isCloseTo(98.208, within(5e-4));
        assertThat(segments.get(1).differsFromPrevious()).isFalse();
        assertThat(segments.get(0).fromPh()).isEqualTo(4.005);
        assertThat(segments.get(0).toPh()).isEqualTo(6.865);
        assertThat(evaluation.verdict()).isEqualTo(Verdict.FIT);
    }

    /** DERIVED: u(k')/k' = sqrt(2) sqrt(u_pH^2 + (u_E/k')^2) / dpH. */
    @Test
    void aSegmentIsAsUncertainAsItsTwoBuffers() {
        SegmentSlope segment = CalibrationEvaluation.of(Sessions.potentials(
                        Sessions.reading("iupac-phthalate", 170), Sessions.reading("iupac-phosphate", 5)))
                .segments()
                .get(0);
        double relative = Math.sqrt(2) * Math.hypot(0.01, 0.5 / segment.slopeMvPerPh()) / 2.86;
        assertThat(segment.percentUncertainty()).isCloseTo(segment.percent() * relative, within(1e-6));
    }

    /** DERIVED: readings of one buffer are one end of a segment, at their mean; the buffer's own error stays, theirs shrinks. */
    @Test
    void readingsOfOneBufferAreOneEndOfASegment() {
        List<SegmentSlope> segments = CalibrationEvaluation.of(Sessions.potentials(
                        Sessions.own(4.01, 171),
                        Sessions.own(4.01, 173),
                        Sessions.own(4.01, 172.6),
                        Sessions.own(7, 1)))
                .segments();
        assertThat(segments).hasSize(1);
        SegmentSlope segment = segments.get(0);
        double slope = (172.2 - 1) / 2.99;
        double variance = 2 * Math.pow(0.01 * slope, 2) + 0.25 / 3 + 0.25;
        assertThat(segment.fromPh()).isCloseTo(4.01, within(1e-12));
        assertThat(segment.slopeMvPerPh()).isCloseTo(slope, within(1e-9));
        assertThat(segment.percentUncertainty()).isCloseTo(100 / 59.159 * Math.sqrt(variance) / 2.99, within(1e-4));
    }

    @ParameterizedTest(name = "{0} {1} {2}")
    @CsvFileSource(resources = "/published/electrode/buffer-changes.csv", useHeadersInDisplayName = true)
    void waterAndAirChangeABuffer(
            BufferSubstance substance,
            String cause,
            double parameter,
            double phChange,
            double tolerance,
            String source) {
        double change = cause.equals("water")
                ? BufferChange.byWater(substance, parameter)
                : BufferChange.byCarbonDioxide(substance, parameter);
        assertThat(change).as(source).isCloseTo(phChange, within(tolerance));
    }
}
