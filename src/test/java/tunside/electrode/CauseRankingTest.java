package tunside.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tunside.electrode.Sessions.cup;
import static tunside.electrode.Sessions.millivolts;
import static tunside.electrode.Sessions.reading;
import static tunside.electrode.Sessions.settled;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.quantity.Temperature;
import tunside.quantity.TimeSpan;

/** Each cause is planted into the readings of an otherwise sound electrode; the ranking must find it. */
class CauseRankingTest {
    private static final ReadingModel.Workspace SPACE = new ReadingModel.Workspace(121);

    private static SuspectedCause first(BufferReading... readings) {
        return CauseRanking.of(Sessions.potentials(readings)).get(0);
    }

    /** A reading in a cup that is entered as one buffer and has another pH. */
    private static BufferReading mistaken(String entered, double realPh, double offsetMv) {
        return reading(entered, millivolts(realPh, 25, 98, offsetMv));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void aSoundElectrodeIsFoundSound(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<BufferReading> readings = Sessions.sound(random, "iupac-phthalate", "iupac-phosphate", "iupac-borax");
        List<SuspectedCause> causes = CauseRanking.of(CalibrationSession.ofPotentials(readings));
        assertThat(causes.get(0).cause()).isEqualTo(Cause.SOUND);
        assertThat(causes.get(0).weight()).isGreaterThan(0.8);
        assertThat(causes.get(0).improvement()).isZero();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void theWeightsSumToOneAndFall(long seed) {
        List<SuspectedCause> causes = CauseRanking.of(CalibrationSession.ofPotentials(
                Sessions.sound(new SplittableRandom(seed), "technical-4.00", "technical-7.00", "technical-10.01")));
        assertThat(causes.stream().mapToDouble(SuspectedCause::weight).sum()).isCloseTo(1, within(1e-12));
        assertThat(causes).isSortedAccordingTo((a, b) -> Double.compare(b.weight(), a.weight()));
    }

    @ParameterizedTest
    @CsvSource({
        "technical-7.00, 6.865, NEUTRAL_BUFFER_IS_6_86",
        "jis-phosphate,  7.00,  NEUTRAL_BUFFER_IS_7_00",
    })
    void aNeutralBufferTakenForTheOther(String entered, double real, Cause cause) {
        for (double offset : new double[] {-8, 0, 8}) {
            SuspectedCause found = first(
                    mistaken("iupac-phthalate", 4.005, offset),
                    mistaken(entered, real, offset),
                    mistaken("iupac-borax", 9.18, offset));
            assertThat(found.cause()).isEqualTo(cause);
            assertThat(found.weight()).isGreaterThan(0.8);
            assertThat(found.readings()).containsExactly(1);
            assertThat(found.parameter()).isEmpty();
            assertThat(found.improvement()).isGreaterThan(10);
        }
    }

    @Test
    void twoPowdersTakenForTheTechnicalSetShowASlopeOf953Percent() {
        BufferReading four = reading("technical-4.00", millivolts(4.005, 25, 99, 0));
        BufferReading seven = reading("technical-7.00", millivolts(6.865, 25, 99, 0));
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(Sessions.potentials(four, seven));
        assertThat(evaluation.line().slopePercent() / 99).isCloseTo(0.953, within(0.0005));
        assertThat(evaluation.causes().stream()
                        .filter(cause -> cause.cause() == Cause.NEUTRAL_BUFFER_IS_6_86)
                        .findFirst()
                        .orElseThrow()
                        .weight())
                .isGreaterThan(0.1);
    }

    @ParameterizedTest
    @CsvSource({
        "iupac-carbonate, 9.18, ALKALINE_BUFFER_IS_9_18",
        "iupac-borax, 10.012,  ALKALINE_BUFFER_IS_10_01",
    })
    void anAlkalineBufferTakenForTheOther(String entered, double real, Cause cause) {
        SuspectedCause found = first(
                mistaken("iupac-phthalate", 4.005, 3),
                mistaken("iupac-phosphate", 6.865, 3),
                mistaken(entered, real, 3));
        assertThat(found.cause()).isEqualTo(cause);
        assertThat(found.readings()).containsExactly(2);
    }

    @Test
    void swappedCups() {
        SuspectedCause two = first(mistaken("iupac-phthalate", 6.865, 2), mistaken("iupac-phosphate", 4.005, 2));
        assertThat(two.cause()).isEqualTo(Cause.SWAPPED_CUPS);
        SuspectedCause three = first(
                mistaken("iupac-phthalate", 4.005, 2),
                mistaken("iupac-phosphate", 9.18, 2),
                mistaken("iupac-borax", 6.865, 2));
        assertThat(three.cause()).isEqualTo(Cause.SWAPPED_CUPS);
        assertThat(three.readings()).containsExactly(1, 2);
        assertThat(three.weight()).isGreaterThan(0.95);
    }

    @Test
    void allBuffersWarmerThanStated() {
        List<BufferReading> readings = new ArrayList<>();
        for (String id : List.of("jis-tetroxalate", "jis-phthalate", "jis-phosphate")) {
            double ph = Buffers.get(id).ph(new Temperature(45));
            readings.add(reading(id, millivolts(ph, 45, 98, 1)));
        }
        SuspectedCause found =
                CauseRanking.of(CalibrationSession.ofPotentials(readings)).get(0);
        assertThat(found.cause()).isEqualTo(Cause.WRONG_TEMPERATURE);
        assertThat(found.readings()).containsExactly(0, 1, 2);
        assertThat(found.parameter().orElseThrow()).isCloseTo(20, within(4.0));
        assertThat(found.parameterUncertainty().orElseThrow()).isBetween(0.5, 4.0);
    }

    @Test
    void oneCupWarmerThanStated() {
        SuspectedCause found = first(
                reading("iupac-phthalate", millivolts(4.038, 45, 98, 1)),
                mistaken("iupac-phosphate", 6.865, 1),
                mistaken("iupac-borax", 9.18, 1));
        assertThat(found.cause()).isEqualTo(Cause.WRONG_TEMPERATURE);
        assertThat(found.readings()).containsExactly(0);
        assertThat(found.parameter().orElseThrow()).isCloseTo(20, within(4.0));
    }

    /** An alkaline buffer falls when warmed, which hides the steeper slope: the service must not claim to know. */
    @Test
    void warmBuffersOnBothSidesHideThemselves() {
        List<BufferReading> readings = new ArrayList<>();
        for (String id : List.of("iupac-phthalate", "iupac-phosphate", "iupac-borax", "iupac-carbonate")) {
            readings.add(reading(id, millivolts(Buffers.get(id).ph(new Temperature(45)), 45, 98, 1)));
        }
        List<SuspectedCause> causes = CauseRanking.of(CalibrationSession.ofPotentials(readings));
        assertThat(causes.get(0).weight()).isLessThan(0.8);
        assertThat(causes.subList(0, 2))
                .extracting(SuspectedCause::cause)
                .containsExactlyInAnyOrder(Cause.SOUND, Cause.WRONG_TEMPERATURE);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.55, 2})
    void aPowderMadeUpWithTheWrongVolume(double ratio) {
        double change = BufferChange.byWater(BufferSubstance.PHOSPHATE, ratio - 1);
        SuspectedCause found = first(
                mistaken("jis-tetroxalate", 1.68, 0),
                mistaken("iupac-phosphate", 6.865 + change, 0),
                mistaken("iupac-phthalate", 4.005, 0),
                mistaken("iupac-borax", 9.18, 0),
                mistaken("iupac-carbonate", 10.012, 0));
        assertThat(found.cause()).isEqualTo(Cause.WRONG_WATER_VOLUME);
        assertThat(found.readings()).containsExactly(1);
        assertThat(found.parameter().orElseThrow()).isCloseTo(ratio, within(0.25));
    }

    @Test
    void anAlkalineBufferAgedByCarbonDioxide() {
        SuspectedCause found = first(
                mistaken("iupac-phthalate", 4.005, 0),
                mistaken("iupac-phosphate", 6.865, 0),
                mistaken("iupac-borax", 9.18 - 0.0941, 0));
        assertThat(found.cause()).isEqualTo(Cause.CARBON_DIOXIDE);
        assertThat(found.parameter().orElseThrow()).isCloseTo(2, within(0.4));
        assertThat(found.readings()).containsExactly(2);
    }

    @Test
    void aCrackedBulb() {
        assertThat(first(reading("iupac-phthalate", 12), reading("iupac-phosphate", 10))
                        .cause())
                .isEqualTo(Cause.CRACKED_BULB);
        assertThat(first(reading("iupac-phthalate", -40), reading("iupac-phosphate", -41), reading("iupac-borax", -42))
                        .cause())
                .isEqualTo(Cause.CRACKED_BULB);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-45, 40})
    void aCoatedBulb(double offset) {
        SuspectedCause found = first(
                reading("iupac-phthalate", millivolts(4.005, 25, 97, offset)),
                reading("iupac-phosphate", millivolts(6.865, 25, 97, offset)),
                reading("iupac-borax", millivolts(9.18, 25, 97, offset)));
        assertThat(found.cause()).isEqualTo(Cause.COATED_BULB);
    }

    @Test
    void weakGlass() {
        SuspectedCause found = first(
                reading("iupac-phthalate", millivolts(4.005, 25, 87, 4)),
                reading("iupac-phosphate", millivolts(6.865, 25, 87, 4)),
                reading("iupac-borax", millivolts(9.18, 25, 87, 4)));
        assertThat(found.cause()).isEqualTo(Cause.WEAK_GLASS);
        assertThat(found.weight()).isGreaterThan(0.5);
    }

    @Test
    void aSlowJunctionBySettlingTimes() {
        SplittableRandom random = new SplittableRandom(11);
        List<BufferReading> readings =
                Sessions.sound(random, "iupac-phthalate", "iupac-phosphate", "iupac-borax").stream()
                        .map(reading -> settled(reading, 200))
                        .toList();
        assertThat(CauseRanking.of(CalibrationSession.ofPotentials(readings))
                        .get(0)
                        .cause())
                .isEqualTo(Cause.SLOW_JUNCTION);
    }

    @Test
    void aSlowJunctionByWhatIsMissing() {
        double share = 0.12;
        double four = millivolts(4.005, 25, 98, 0);
        double seven = millivolts(6.865, 25, 98, 0);
        double nine = millivolts(9.18, 25, 98, 0);
        double sevenRead = seven + share * (four - seven);
        double nineRead = nine + share * (sevenRead - nine);
        double sevenAgain = seven + share * (nineRead - seven);
        SuspectedCause found = first(
                settled(reading("iupac-phthalate", four), 90),
                settled(reading("iupac-phosphate", sevenRead), 90),
                settled(reading("iupac-borax", nineRead), 90),
                settled(reading("iupac-phosphate", sevenAgain), 90));
        assertThat(found.cause()).isEqualTo(Cause.SLOW_JUNCTION);
        assertThat(found.parameter().orElseThrow()).isCloseTo(share, within(0.03));
    }

    @Test
    void nonsenseIsUnexplained() {
        assertThat(first(
                                reading("iupac-phthalate", 171),
                                reading("iupac-phosphate", -60),
                                reading("iupac-borax", -20),
                                reading("iupac-carbonate", -190))
                        .cause())
                .isEqualTo(Cause.UNEXPLAINED);
    }

    @Test
    void aBottleIsNotSuspectedOfWrongWaterNorAKnownVolume() {
        for (Preparation preparation : List.of(
                new Preparation(OptionalDouble.empty(), Optional.of(new TimeSpan(3600)), BufferState.OPENED),
                new Preparation(OptionalDouble.of(1), Optional.empty(), BufferState.MADE_UP))) {
            List<SuspectedCause> causes = CauseRanking.of(Sessions.potentials(
                    reading(Sessions.prepared("iupac-phthalate", preparation), 25, 170),
                    reading(Sessions.prepared("iupac-phosphate", preparation), 25, 5)));
            assertThat(causes).extracting(SuspectedCause::cause).doesNotContain(Cause.WRONG_WATER_VOLUME);
        }
        assertThat(CauseRanking.of(Sessions.potentials(
                        reading(cup("iupac-phthalate"), 25, 170), reading(cup("iupac-phosphate"), 25, 5))))
                .extracting(SuspectedCause::cause)
                .contains(Cause.WRONG_WATER_VOLUME)
                .doesNotContain(Cause.CARBON_DIOXIDE, Cause.ALKALINE_BUFFER_IS_10_01, Cause.NEUTRAL_BUFFER_IS_6_86);
    }

    @ParameterizedTest
    @EnumSource(Cause.class)
    void everyCauseHasWordsAndANextStep(Cause cause) {
        assertThat(cause.meaning()).endsWith(".");
        assertThat(cause.nextStep().message()).endsWith(".");
        assertThat(cause.parameter().isPresent()).isEqualTo(cause.unit().isPresent());
        assertThat(cause.prior()).isPositive();
    }

    /** The closed form against the product of two densities for independent readings without slope or offset in play. */
    @Test
    void theDensityIsThatOfAJointNormal() {
        double plain = density(new double[] {1, 2}, new double[] {0, 1}, new double[] {0.5, 2}, 0, 0);
        double expected = -Math.log(2 * Math.PI) - Math.log(0.5) - Math.log(2) - 0.5 * 4 - 0.5 * 0.25;
        assertThat(plain).isCloseTo(expected, within(1e-12));
        // one reading: variances add
        double one = density(new double[] {3}, new double[] {2}, new double[] {1}, 0.5, 2);
        double variance = 1 + 0.25 * 4 + 4;
        assertThat(one).isCloseTo(-0.5 * Math.log(2 * Math.PI * variance) - 0.5 * 1 / variance, within(1e-12));
        // two readings: covariance matrix [[1+1+4, 2+4], [2+4, 1+4+4]] for s = 1, ideal 1 and 2, offset 2
        double two = density(new double[] {2, 1}, new double[] {1, 2}, new double[] {1, 1}, 1, 2);
        double determinant = 6 * 9 - 6 * 6;
        double square = (9 * 1 - 2 * 6 * 1 * -1 + 6 * 1) / determinant;
        assertThat(two).isCloseTo(-Math.log(2 * Math.PI) - 0.5 * Math.log(determinant) - 0.5 * square, within(1e-12));
        assertThat(ReadingModel.logSettling(20, Math.log(20), 0.5))
                .isCloseTo(-Math.log(0.5) - 0.5 * Math.log(2 * Math.PI), within(1e-12));
        assertThat(ReadingModel.logSettling(0, 0.5, 1)).isEqualTo(ReadingModel.logSettling(1, 0.5, 1));
    }

    private static double density(
            double[] potentialsMv, double[] idealMv, double[] noiseMv, double slopeSd, double offsetSd) {
        double[][] changed = new double[idealMv.length][];
        double[] same = idealMv.clone();
        for (int i = 1; i < changed.length; i++) {
            changed[i] = new double[] {idealMv[i]};
            same[i] = Double.NaN;
        }
        return new ReadingModel(potentialsMv, noiseMv, 1, slopeSd, offsetSd)
                .evidence(same, changed, ParameterGrid.NONE, SPACE)
                .log();
    }

    @Test
    void whereTheTablesDoNotReachNothingIsPossible() {
        ReadingModel model = new ReadingModel(new double[] {3}, new double[] {1}, 1, 0.1, 2);
        ParameterGrid grid = ParameterGrid.even(-1, 1, 0.5, 121);
        double[] changed = new double[grid.size()];
        Arrays.fill(changed, Double.NaN);
        assertThat(model.evidence(new double[1], new double[][] {changed}, grid, SPACE)
                        .log())
                .isEqualTo(Double.NEGATIVE_INFINITY);
        changed[60] = 3;
        double one = model.evidence(new double[1], new double[][] {changed}, grid, SPACE)
                .log();
        double[] shares = SPACE.shares(grid);
        assertThat(shares[59]).isZero();
        assertThat(shares[60]).isPositive();
        double alone = model.evidence(new double[] {3}, new double[1][], ParameterGrid.NONE, SPACE)
                .log();
        assertThat(one).isCloseTo(alone + Math.log(grid.prior(60)), within(1e-12));
    }

    /** Readings from plain to very sharp, in two to five cups, of which one may be another than stated. */
    private static CalibrationSession any(SplittableRandom random) {
        List<String> ids = List.copyOf(Buffers.all().keySet());
        double noise = List.of(0.05, 0.5, 2.0).get(random.nextInt(3));
        double slope = 90 + 10 * random.nextDouble();
        double offset = 20 * (random.nextDouble() - 0.5);
        double degC = random.nextBoolean() ? 25 : 5 + 40 * random.nextDouble();
        Temperature at = new Temperature(degC);
        List<BufferReading> readings = new ArrayList<>();
        int cups = 2 + random.nextInt(4);
        while (readings.size() < cups) {
            Buffer buffer = Buffers.get(ids.get(random.nextInt(ids.size())));
            if (buffer.covers(at)) {
                double real = buffer.ph(at) + (random.nextInt(7) == 0 ? 0.1 * random.nextDouble() : 0);
                BufferCup cup = random.nextInt(6) == 0 ? BufferCup.ofPh(buffer.ph(at)) : BufferCup.of(buffer);
                readings.add(reading(
                        cup, degC, millivolts(real, degC, slope, offset) + noise * (random.nextDouble() - 0.5)));
            }
        }
        return CalibrationSession.ofPotentials(readings);
    }

    /** However sharp the readings are, the grid that is taken gives what one of two thousand points gives. */
    @Test
    void theGridIsFineEnough() {
        CauseGrids exact = new CauseGrids(2001);
        SplittableRandom random = new SplittableRandom(7);
        int coarse = 0;
        int tried = 0;
        while (tried < 400) {
            CalibrationSession session = any(random);
            if (session.spanPh() < CalibrationSession.leastSpanPh()) {
                continue;
            }
            tried++;
            List<SuspectedCause> found = CauseRanking.of(session);
            coarse += found.equals(CauseRanking.of(session, CauseGrids.EVER_FINER.get(0))) ? 1 : 0;
            for (SuspectedCause expected : CauseRanking.of(session, exact)) {
                SuspectedCause cause = found.stream()
                        .filter(one -> one.cause() == expected.cause())
                        .findFirst()
                        .orElseThrow();
                assertThat(cause.weight()).isCloseTo(expected.weight(), within(0.007));
                if (expected.parameter().isPresent()
                        && expected.weight() > 0.02
                        && cause.readings().equals(expected.readings())) {
                    double sd = expected.parameterUncertainty().orElseThrow();
                    assertThat(cause.parameter().orElseThrow())
                            .isCloseTo(expected.parameter().orElseThrow(), within(0.15 * sd));
                    assertThat(cause.parameterUncertainty().orElseThrow()).isCloseTo(sd, within(0.13 * sd));
                }
            }
        }
        assertThat(coarse).isBetween(240, 395);
    }

    /** One reading whose ideal potential is the parameter times a factor: the larger that, the sharper the peak. */
    private static double between(double factor, double potentialMv, ParameterGrid grid) {
        double[] changed = new double[grid.size()];
        for (int i = 0; i < changed.length; i++) {
            changed[i] = factor * grid.value(i);
        }
        return new ReadingModel(new double[] {potentialMv}, new double[] {1}, 1, 0, 0)
                .evidence(new double[1], new double[][] {changed}, grid, SPACE)
                .logBetween();
    }

    @Test
    void aPeakBetweenThePointsIsNoticed() {
        ParameterGrid grid = ParameterGrid.even(-1, 1, 0.5, 41); // every 0.05
        double top = -0.5 * Math.log(2 * Math.PI);
        assertThat(between(20, 0, grid)).isEqualTo(Double.NEGATIVE_INFINITY); // a deviation is 0.05
        assertThat(between(2000, 50, grid)) // at 0.025, half-way between two points that show next to nothing
                .isCloseTo(top + Math.log(grid.prior(20) + grid.prior(21)), within(1e-6));
        assertThat(between(2000, 1995, grid)) // at 0.9975, beside the last point
                .isCloseTo(top + Math.log(grid.prior(40)), within(1e-6));
        assertThat(between(20, 2000, grid)).isEqualTo(Double.NEGATIVE_INFINITY); // far outside
    }

    @Test
    void whereATableEndsHalfOfTheLastPointIsUnsure() {
        ParameterGrid grid = ParameterGrid.even(-1, 1, 0.5, 41);
        double[] changed = new double[grid.size()];
        Arrays.fill(changed, 3);
        Arrays.fill(changed, 31, 41, Double.NaN);
        ReadingModel model = new ReadingModel(new double[] {3}, new double[] {1}, 1, 0, 0);
        double all = -0.5 * Math.log(2 * Math.PI);
        assertThat(model.evidence(new double[1], new double[][] {changed}, grid, SPACE)
                        .logBetween())
                .isCloseTo(all + Math.log(grid.prior(30) / 2), within(1e-9));
        Arrays.fill(changed, 0, 10, Double.NaN);
        assertThat(model.evidence(new double[1], new double[][] {changed}, grid, SPACE)
                        .logBetween())
                .isCloseTo(all + Math.log((grid.prior(30) + grid.prior(10)) / 2), within(1e-9));
    }

    @Test
    void theGridsSumANormalPriorThatIsCutOff() {
        ParameterGrid even = ParameterGrid.even(-1, 1, 0.7, 31);
        ParameterGrid fromZero = ParameterGrid.fromZero(2, 1.5, 31);
        assertThat(meanSquare(even)).isCloseTo(meanSquare(ParameterGrid.even(-1, 1, 0.7, 20_001)), within(2e-6));
        assertThat(meanSquare(fromZero)).isCloseTo(meanSquare(ParameterGrid.fromZero(2, 1.5, 20_001)), within(2e-5));
        assertThat(meanSquare(ParameterGrid.even(0, 2, 1.5, 20_001)))
                .isCloseTo(meanSquare(ParameterGrid.fromZero(2, 1.5, 20_001)), within(1e-9));
    }

    private static double meanSquare(ParameterGrid grid) {
        double sum = 0;
        double square = 0;
        for (int i = 0; i < grid.size(); i++) {
            sum += grid.prior(i);
            square += grid.prior(i) * grid.value(i) * grid.value(i);
        }
        assertThat(sum).isCloseTo(1, within(1e-12));
        return square;
    }
}
