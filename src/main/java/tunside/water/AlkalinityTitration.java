package tunside.water;

/**
 * An alkalinity titration as it was done: acid run into a sample down to an end point.
 *
 * @param sampleMl sample, above 0
 * @param acidMl acid down to the first end point, not negative
 * @param normalityEqPerL of the acid, above 0
 * @param endPointPh first end point
 */
public record AlkalinityTitration(double sampleMl, double acidMl, double normalityEqPerL, double endPointPh) {
    public AlkalinityTitration {
        WaterReport.require("sample (mL)", sampleMl, 1, 10_000);
        WaterReport.require("acid (mL)", acidMl, 0, 10_000);
        WaterReport.require("strength of the acid (eq/L)", normalityEqPerL, 1e-4, 10);
        WaterReport.require("end point pH", endPointPh, 3.5, 5.5);
    }

    /** Acid used, mEq per litre of sample. */
    public double alkalinityMeqPerL() {
        return 1000 * normalityEqPerL * acidMl / sampleMl;
    }

    /**
     * Alkalinity of a soft water from two end points 0.3 apart, mEq/L: {@code (2 B - C) N / sample} (SM-2320B). Between the
     * two nearly only free acid is made, so what the first of them overstates cancels.
     *
     * @param toSecondMl acid down to the second end point, counted from the start, not less than to the first
     */
    public double lowAlkalinityMeqPerL(double toSecondMl) {
        WaterReport.require("acid to the second end point (mL)", toSecondMl, acidMl, 10_000);
        return 1000 * normalityEqPerL * (2 * acidMl - toSecondMl) / sampleMl;
    }
}
