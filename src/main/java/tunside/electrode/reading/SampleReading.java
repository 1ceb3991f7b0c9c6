package tunside.electrode.reading;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tunside.electrode.Calibration;
import tunside.electrode.MeterCompensation;
import tunside.electrode.NernstSlope;
import tunside.electrode.ReadingUncertainty;
import tunside.quantity.Temperature;

/**
 * A series of readings in one sample, and what is known beside it.
 *
 * @param points one to 2,000, rising in time
 * @param calibration of the electrode, if there is one
 * @param compensation of the meter that gave the readings
 * @param uncertainty of one reading
 * @param stepPh last digit of the display, pH
 * @param liquid what was read
 * @param criterion when it counts as settled
 * @param sinceCalibrationS s from the calibration to the last reading, where known
 * @param rechecks of buffers after the calibration
 * @param range that the pH is wanted in, for a sample of 20 degC
 */
public record SampleReading(
        List<SamplePoint> points,
        Optional<Calibration> calibration,
        MeterCompensation compensation,
        ReadingUncertainty uncertainty,
        double stepPh,
        SampleLiquid liquid,
        SettlingCriterion criterion,
        OptionalDouble sinceCalibrationS,
        List<Recheck> rechecks,
        PhInterval range) {
    /** Most readings in a series. */
    public static final int MOST = 2000;

    public SampleReading {
        points = List.copyOf(points);
        rechecks = List.copyOf(rechecks);
        if (points.isEmpty() || points.size() > MOST) {
            throw new IllegalArgumentException(
                    "a series has from 1 to %d readings but this has %d".formatted(MOST, points.size()));
        }
        for (int i = 1; i < points.size(); i++) {
            if (!(points.get(i).seconds() > points.get(i - 1).seconds())) {
                throw new IllegalArgumentException("reading %d is not later than the one before".formatted(i));
            }
        }
        if (!(stepPh >= 0.0001 && stepPh <= 0.5)) {
            throw new IllegalArgumentException("step must be from 0.0001 to 0.5 but is %s".formatted(stepPh));
        }
        if (!rechecks.isEmpty() && (calibration.isEmpty() || sinceCalibrationS.isEmpty())) {
            throw new IllegalArgumentException(
                    "a re-check needs a calibration and the time since it, or drift has no beginning");
        }
    }

    /** Last digit of a display where none is stated, pH: 0.01, or 0.1 mV. */
    public static double usualStepPh(boolean millivolts) {
        return millivolts
                ? ReadingLimits.of("potential-step") / NernstSlope.millivoltsPerPh(new Temperature(25))
                : ReadingLimits.of("display-step");
    }

    SamplePoint last() {
        return points.get(points.size() - 1);
    }

    /** What it is read with: the calibration, or an ideal electrode that nobody may trust. */
    Calibration used() {
        return calibration.orElseGet(() -> Calibration.ideal(compensation));
    }
}
