package tunside.electrode;

import tunside.quantity.Potential;
import tunside.quantity.Temperature;

/**
 * What a calibration leaves behind for later readings: the line {@code E = offset - slope (pH - 7)} at one temperature,
 * with its covariance, and what is assumed at others.
 *
 * @param signal what the meter gave; a calibration of displayed pH reads displayed pH only
 * @param temperature of the line
 * @param slopeMvPerPh loss of potential per pH unit at that temperature, positive
 * @param offsetMv potential at pH 7
 * @param slopeVariance (mV/pH)^2
 * @param offsetVariance mV^2
 * @param slopeOffsetCovariance mV^2/pH
 * @param isothermalPoint where lines of different temperatures are taken to cross
 * @param compensation of the meter; matters for displayed pH only
 * @param lowestPh of the buffers
 * @param highestPh of the buffers
 * @param verdict whether the electrode may be trusted
 * @param model version of the model that computed it, {@link #MODEL}
 */
public record Calibration(
        CalibrationSignal signal,
        Temperature temperature,
        double slopeMvPerPh,
        double offsetMv,
        double slopeVariance,
        double offsetVariance,
        double slopeOffsetCovariance,
        IsothermalPoint isothermalPoint,
        MeterCompensation compensation,
        double lowestPh,
        double highestPh,
        Verdict verdict,
        String model) {

    /** Version of this model: a document of another one is refused. */
    public static final String MODEL = "calibration-line-1";

    /** The pH at which {@link #offsetMv} is stated. */
    public static final double OFFSET_PH = 7;

    public Calibration {
        within("slope", slopeMvPerPh, 1, 120);
        within("offset", offsetMv, -1000, 1000);
        within("slope variance", slopeVariance, 0, 1e4);
        within("offset variance", offsetVariance, 0, 1e6);
        double most = Math.sqrt(slopeVariance * offsetVariance) * (1 + 1e-9);
        within("covariance of slope and offset", slopeOffsetCovariance, -most, most);
        within("lowest pH", lowestPh, 0, 14);
        within("highest pH", highestPh, lowestPh, 14);
        if (!MODEL.equals(model)) {
            throw new IllegalArgumentException(
                    "the calibration is of model %s, this service reads %s: calibrate again".formatted(model, MODEL));
        }
    }

    /** What stands for a calibration where there is none: an ideal electrode behind a meter; nobody may trust it. */
    public static Calibration ideal(MeterCompensation compensation) {
        Temperature room = new Temperature(25);
        return new Calibration(
                CalibrationSignal.DISPLAYED_PH,
                room,
                NernstSlope.millivoltsPerPh(room),
                0,
                0,
                0,
                0,
                IsothermalPoint.OFFSET_KEPT,
                compensation,
                0,
                14,
                Verdict.UNFIT,
                MODEL);
    }

    private static void within(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(
                    "%s of the calibration must be from %s to %s but is %s".formatted(name, low, high, value));
        }
    }

    /** Slope as a percentage of the ideal one at the calibration's temperature. */
    public double slopePercent() {
        return 100 * slopeMvPerPh / NernstSlope.millivoltsPerPh(temperature);
    }

    /** Standard uncertainty of {@link #slopePercent}. */
    public double slopePercentUncertainty() {
        return 100 * Math.sqrt(slopeVariance) / NernstSlope.millivoltsPerPh(temperature);
    }

    /** The pH at 0 mV, at the calibration's temperature. */
    public double zeroPointPh() {
        return OFFSET_PH + offsetMv / slopeMvPerPh;
    }

    /** Slope at another temperature, mV per pH unit: the same percentage of the ideal one. */
    public double slopeMvPerPh(Temperature at) {
        return slopeMvPerPh * at.kelvin() / temperature.kelvin();
    }

    /** Whether this pH lies between the outer buffers. */
    public boolean brackets(double ph) {
        return ph >= lowestPh && ph <= highestPh;
    }

    /** The same calibration under another assumption about the crossing of the lines. */
    public Calibration with(IsothermalPoint other) {
        return new Calibration(
                signal,
                temperature,
                slopeMvPerPh,
                offsetMv,
                slopeVariance,
                offsetVariance,
                slopeOffsetCovariance,
                other,
                compensation,
                lowestPh,
                highestPh,
                verdict,
                model);
    }

    /** The pH that a potential means at a temperature of the solution. */
    public double ph(Potential potential, Temperature solution) {
        double slope = slopeMvPerPh(solution);
        return switch (isothermalPoint) {
            case OFFSET_KEPT -> OFFSET_PH - (potential.millivolts() - offsetMv) / slope;
            case ZERO_POINT_KEPT -> zeroPointPh() - potential.millivolts() / slope;
        };
    }

    /** The potential that a pH gives at a temperature of the solution: the inverse of {@link #ph}. */
    public Potential potential(double ph, Temperature solution) {
        double slope = slopeMvPerPh(solution);
        return switch (isothermalPoint) {
            case OFFSET_KEPT -> new Potential(offsetMv - slope * (ph - OFFSET_PH));
            case ZERO_POINT_KEPT -> new Potential(-slope * (ph - zeroPointPh()));
        };
    }

    /**
     * Reads a potential back, with its uncertainty: GUM-2008 propagation through the line as ISO-28037-2010 has it, the
     * temperature, the junction, and the isothermal point, whose two readings are taken as the end and the middle of a
     * rectangular distribution.
     *
     * @param potential of the electrode, or behind the display ({@link #potentialBehind})
     * @param solution its temperature
     */
    public CalibratedPh read(Potential potential, Temperature solution, ReadingUncertainty reading) {
        double ph = ph(potential, solution);
        double slope = slopeMvPerPh(solution);
        double bySlope = (OFFSET_PH - ph) / slopeMvPerPh;
        double byOffset = 1 / slope;
        double lineVariance = bySlope * bySlope * slopeVariance
                + byOffset * byOffset * offsetVariance
                + 2 * bySlope * byOffset * slopeOffsetCovariance;
        return new CalibratedPh(
                ph,
                Math.sqrt(Math.max(0, lineVariance)),
                reading.potentialMv() / slope,
                Math.abs(ph - OFFSET_PH) * reading.temperatureK() / solution.kelvin(),
                reading.liquidJunctionPh(),
                Math.abs(with(isothermalPoint.other()).ph(potential, solution) - ph) / Math.sqrt(3));
    }

    /** The potential behind a displayed pH, as this calibration's meter computes it. */
    public Potential potentialBehind(double displayedPh, Temperature solution) {
        return compensation.potentialBehind(displayedPh, solution);
    }
}
