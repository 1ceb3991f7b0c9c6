package tunside.electrode.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tunside.electrode.Calibration;
import tunside.electrode.CalibrationSignal;
import tunside.electrode.IsothermalPoint;
import tunside.electrode.MeterCompensation;
import tunside.electrode.ReadingUncertainty;
import tunside.electrode.Verdict;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

/** Samples for tests. */
final class Samples {
    static final ReadingUncertainty CERTAIN = new ReadingUncertainty(0, 0, 0);
    static final PhInterval MASH = new PhInterval(OptionalDouble.of(5.2), OptionalDouble.of(5.5));

    private Samples() {}

    /** 58 mV per pH and -3 mV at 25 degC, buffers 4 and 9. */
    static Calibration calibration(Verdict verdict) {
        return new Calibration(
                CalibrationSignal.POTENTIAL,
                new Temperature(25),
                58,
                -3,
                0.04,
                0.2,
                -0.01,
                IsothermalPoint.OFFSET_KEPT,
                MeterCompensation.automatic(),
                4,
                9,
                verdict,
                Calibration.MODEL);
    }

    /** Readings every 10 s that stand still. */
    static List<SamplePoint> standing(Calibration calibration, double ph, double degC, int n) {
        List<SamplePoint> points = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            points.add(point(calibration, ph, degC, 10 * i));
        }
        return points;
    }

    static SamplePoint point(Calibration calibration, double ph, double degC, double seconds) {
        Temperature temperature = new Temperature(degC);
        return new SamplePoint(seconds, calibration.potential(ph, temperature), temperature);
    }

    static SampleReading reading(Calibration calibration, List<SamplePoint> points, SampleLiquid liquid) {
        return reading(calibration, points, liquid, ReadingUncertainty.USUAL, List.of());
    }

    static SampleReading reading(
            Calibration calibration,
            List<SamplePoint> points,
            SampleLiquid liquid,
            ReadingUncertainty uncertainty,
            List<Recheck> rechecks) {
        return new SampleReading(
                points,
                Optional.of(calibration),
                calibration.compensation(),
                uncertainty,
                0.001,
                liquid,
                SettlingCriterion.usual(),
                OptionalDouble.of(4 * 3600),
                rechecks,
                MASH);
    }

    /** One displayed pH of a meter that nobody calibrated. */
    static SampleReading displayed(double ph, double degC, MeterCompensation compensation) {
        Temperature temperature = new Temperature(degC);
        return new SampleReading(
                List.of(new SamplePoint(0, compensation.potentialBehind(ph, temperature), temperature)),
                Optional.empty(),
                compensation,
                ReadingUncertainty.USUAL,
                0.01,
                SampleLiquid.MASH,
                SettlingCriterion.usual(),
                OptionalDouble.empty(),
                List.of(),
                MASH);
    }

    static Potential millivolts(double value) {
        return new Potential(value);
    }
}
