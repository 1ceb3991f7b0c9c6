package tunside.electrode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;
import tunside.quantity.TimeSpan;

/** Calibrations for tests. */
final class Sessions {
    static final Temperature AT_25 = new Temperature(25);

    private Sessions() {}

    static BufferCup cup(String id) {
        return BufferCup.of(Buffers.get(id));
    }

    static BufferReading reading(BufferCup cup, double degC, double millivolts) {
        return new BufferReading(cup, new Temperature(degC), new Potential(millivolts), Optional.empty());
    }

    static BufferReading reading(String id, double millivolts) {
        return reading(cup(id), 25, millivolts);
    }

    static BufferReading own(double ph, double millivolts) {
        return reading(BufferCup.ofPh(ph), 25, millivolts);
    }

    static CalibrationSession potentials(BufferReading... readings) {
        return CalibrationSession.ofPotentials(List.of(readings));
    }

    static BufferReading settled(BufferReading reading, double seconds) {
        return new BufferReading(
                reading.cup(), reading.temperature(), reading.potential(), Optional.of(new TimeSpan(seconds)));
    }

    static BufferCup prepared(String id, Preparation preparation) {
        return new BufferCup(Optional.of(Buffers.get(id)), OptionalDouble.empty(), OptionalDouble.empty(), preparation);
    }

    /** What an electrode of this slope and offset gives in a solution. */
    static double millivolts(double ph, double degC, double slopePercent, double offsetMv) {
        return offsetMv - slopePercent / 100 * NernstSlope.millivoltsPerPh(new Temperature(degC)) * (ph - 7);
    }

    /** Readings of a sound electrode in fresh buffers, each off by a little. */
    static List<BufferReading> sound(SplittableRandom random, String... ids) {
        double slope = 97 + 2 * random.nextDouble();
        double offset = 10 * (random.nextDouble() - 0.5);
        List<BufferReading> readings = new ArrayList<>();
        for (String id : ids) {
            double ph = Buffers.get(id).ph(AT_25) + 0.005 * (random.nextDouble() - 0.5);
            readings.add(reading(id, millivolts(ph, 25, slope, offset) + 0.5 * (random.nextDouble() - 0.5)));
        }
        return readings;
    }
}
