package tunside.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tunside.electrode.Sessions.cup;
import static tunside.electrode.Sessions.millivolts;
import static tunside.electrode.Sessions.reading;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

class CalibrationPropertiesTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void aTwoPointCalibrationAppliedToItsOwnBuffersReturnsTheirPh(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double degC = 10 + 30 * random.nextDouble();
        List<BufferReading> readings = List.of(
                reading(cup("iupac-phthalate"), degC, 150 + 40 * random.nextDouble()),
                reading(cup("iupac-borax"), degC, -150 + 40 * random.nextDouble()));
        Calibration calibration = CalibrationEvaluation.of(CalibrationSession.ofPotentials(readings))
                .calibration()
                .orElseThrow();
        for (BufferReading reading : readings) {
            assertThat(calibration.ph(reading.potential(), reading.temperature()))
                    .isCloseTo(reading.buffer().ph(), within(1e-9));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void buffersAtDifferentTemperaturesGiveTheSameElectrode(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double slope = 94 + 6 * random.nextDouble();
        double offset = 20 * (random.nextDouble() - 0.5);
        List<BufferReading> readings = new ArrayList<>();
        for (String id : List.of("iupac-phthalate", "iupac-phosphate", "iupac-borax")) {
            double degC = 10 + 30 * random.nextDouble();
            double ph = Buffers.get(id).ph(new Temperature(degC));
            readings.add(reading(cup(id), degC, millivolts(ph, degC, slope, offset)));
        }
        CalibrationLine line = CalibrationLine.of(CalibrationSession.ofPotentials(readings));
        assertThat(line.slopePercent()).isCloseTo(slope, within(1e-8));
        assertThat(line.offsetMv()).isCloseTo(offset, within(1e-8));
        assertThat(line.largestErrorPh()).isLessThan(1e-9);
        assertThat(line.consistent()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theOrderOfTheReadingsDoesNotChangeTheLine(long seed) {
        List<BufferReading> readings = new ArrayList<>(
                Sessions.sound(new SplittableRandom(seed), "iupac-phthalate", "iupac-phosphate", "iupac-borax"));
        CalibrationLine line = CalibrationLine.of(CalibrationSession.ofPotentials(readings));
        Collections.shuffle(readings, new Random(seed));
        CalibrationLine shuffled = CalibrationLine.of(CalibrationSession.ofPotentials(readings));
        assertThat(shuffled.slopeMvPerPh()).isCloseTo(line.slopeMvPerPh(), within(1e-9));
        assertThat(shuffled.offsetMv()).isCloseTo(line.offsetMv(), within(1e-9));
        assertThat(SegmentSlope.of(CalibrationSession.ofPotentials(readings), shuffled))
                .hasSize(2)
                .first()
                .satisfies(segment -> assertThat(segment.fromPh()).isEqualTo(4.005));
    }

    /** Random buffers, potentials and sample potentials; the scatter of the pH is the uncertainty that is stated. */
    @ParameterizedTest
    @ValueSource(doubles = {5.4, 4.2, 8.5})
    void randomDrawsScatterAsTheStatedUncertaintySays(double expectedPh) {
        SplittableRandom random = new SplittableRandom(20_260);
        List<String> ids = List.of("iupac-phthalate", "iupac-phosphate");
        double[] truePotentials = ids.stream()
                .mapToDouble(id -> millivolts(Buffers.get(id).ph(Sessions.AT_25), 25, 97.5202, -2.78846))
                .toArray();
        double sample = millivolts(expectedPh, 25, 97.5202, -2.78846);
        int draws = 20_000;
        double sum = 0;
        double squares = 0;
        for (int draw = 0; draw < draws; draw++) {
            double[] ph = new double[2];
            double[] potential = new double[2];
            for (int i = 0; i < 2; i++) {
                ph[i] = Buffers.get(ids.get(i)).ph(Sessions.AT_25) + 0.01 * random.nextGaussian();
                potential[i] = truePotentials[i] + 0.5 * random.nextGaussian();
            }
            double slope = (potential[0] - potential[1]) / (ph[1] - ph[0]);
            double read = ph[0] - (sample + 0.5 * random.nextGaussian() - potential[0]) / slope;
            sum += read;
            squares += read * read;
        }
        double mean = sum / draws;
        double scatter = Math.sqrt(squares / draws - mean * mean);
        CalibratedPh read = CalibrationEvaluation.of(CalibrationSession.ofPotentials(
                        List.of(reading(ids.get(0), truePotentials[0]), reading(ids.get(1), truePotentials[1]))))
                .calibration()
                .orElseThrow()
                .read(new Potential(sample), Sessions.AT_25, ReadingUncertainty.USUAL);
        assertThat(mean).isCloseTo(expectedPh, within(5e-4));
        assertThat(scatter / read.fromLineAndPotential()).isCloseTo(1, within(0.02));
    }

    @Test
    void extrapolatingFromTheNeutralAndAlkalineBuffersNearlyDoublesTheUncertainty() {
        double inside = line("iupac-phthalate", "iupac-phosphate");
        double outside = line("iupac-phosphate", "iupac-borax");
        assertThat(outside / inside).isBetween(1.5, 2.2);
    }

    private static double line(String low, String high) {
        return CalibrationEvaluation.of(Sessions.potentials(
                        reading(low, millivolts(Buffers.get(low).ph(Sessions.AT_25), 25, 98, 0)),
                        reading(high, millivolts(Buffers.get(high).ph(Sessions.AT_25), 25, 98, 0))))
                .expected()
                .orElseThrow()
                .fromLineAndPotential();
    }

    @Test
    void aDisplayThatAgreesGivesTheIdealLine() {
        List<BufferReading> readings = new ArrayList<>();
        MeterCompensation none = MeterCompensation.none();
        for (String id : List.of("iupac-phthalate", "iupac-phosphate")) {
            double ph = Buffers.get(id).ph(new Temperature(15));
            Potential ideal = new Potential(millivolts(ph, 15, 100, 0));
            readings.add(BufferReading.displayed(
                    cup(id),
                    new Temperature(15),
                    none.displayedPh(ideal, new Temperature(15)),
                    none,
                    Optional.empty()));
        }
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(
                new CalibrationSession(readings, MeterReadout.AS_FOUND, none, ReadingUncertainty.USUAL, 5.4));
        assertThat(evaluation.line().slopePercent()).isCloseTo(100, within(1e-9));
        assertThat(evaluation.line().offsetMv()).isCloseTo(0, within(1e-9));
        assertThat(evaluation.calibration().orElseThrow().signal()).isEqualTo(CalibrationSignal.DISPLAYED_PH);
        assertThat(evaluation.calibration().orElseThrow().compensation()).isEqualTo(none);
        assertThat(evaluation.unknowns()).hasSize(3);
    }
}
