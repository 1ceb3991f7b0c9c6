package tunside.electrode;

import java.util.List;

/**
 * Readings in buffers, in the order in which they were taken, and what is known of the meter.
 *
 * @param readings two to sixteen
 * @param readout what they are
 * @param compensation of the meter; matters for displayed pH
 * @param uncertainty of one reading
 * @param expectedPh of the samples to come, 0 to 14
 */
public record CalibrationSession(
        List<BufferReading> readings,
        MeterReadout readout,
        MeterCompensation compensation,
        ReadingUncertainty uncertainty,
        double expectedPh) {
    /** Fewest readings. */
    public static final int FEWEST = 2;

    /** Most readings. */
    public static final int MOST = 16;

    public CalibrationSession {
        readings = List.copyOf(readings);
        if (!(readings.size() >= FEWEST && readings.size() <= MOST)) {
            throw new IllegalArgumentException("a calibration has from %d to %d readings but this has %d"
                    .formatted(FEWEST, MOST, readings.size()));
        }
        if (!(expectedPh >= 0 && expectedPh <= 14)) {
            throw new IllegalArgumentException("expected pH must be from 0 to 14 but is %s".formatted(expectedPh));
        }
    }

    /** Millivolts, with everything else as usual. */
    public static CalibrationSession ofPotentials(List<BufferReading> readings) {
        return new CalibrationSession(
                readings,
                MeterReadout.POTENTIAL,
                MeterCompensation.automatic(),
                ReadingUncertainty.USUAL,
                usualExpectedPh());
    }

    /** The expected pH where none is stated: that of a mash. */
    public static double usualExpectedPh() {
        return ElectrodeLimits.of("expected-ph");
    }

    /** pH that the meter showed in a reading; for potentials what a meter of ideal calibration would have shown. */
    public double displayedPh(int reading) {
        BufferReading read = readings.get(reading);
        return compensation.displayedPh(read.potential(), read.temperature());
    }

    /** Displayed pH less that of the buffer. */
    public double displayErrorPh(int reading) {
        return displayedPh(reading) - readings.get(reading).buffer().ph();
    }

    /** pH between the outer buffers. */
    public double spanPh() {
        return highestPh() - lowestPh();
    }

    /** The span that a line needs at least. */
    public static double leastSpanPh() {
        return ElectrodeLimits.of("buffer-span");
    }

    double lowestPh() {
        double lowest = Double.POSITIVE_INFINITY;
        for (BufferReading reading : readings) {
            lowest = Math.min(lowest, reading.buffer().ph());
        }
        return lowest;
    }

    double highestPh() {
        double highest = Double.NEGATIVE_INFINITY;
        for (BufferReading reading : readings) {
            highest = Math.max(highest, reading.buffer().ph());
        }
        return highest;
    }
}
