package tunside.dosing;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.interpolation.SplineInterpolator;

/**
 * Protons that a liquid takes up on its way down in pH, in two parts: one whose size is uncertain as a whole, such as the
 * malt's, and one that is known, such as the liquor's carbonate. On the way from pH {@code a} to pH {@code b} the liquid
 * takes up {@code s scaled(b) + fixed(b) - s scaled(a) - fixed(a)} mEq, where {@code s} is the unknown factor.
 *
 * @param scaledMeq uncertain part, mEq against pH, falling
 * @param fixedMeq known part, mEq against pH, never rising
 */
public record TitrationCurve(DoubleUnaryOperator scaledMeq, DoubleUnaryOperator fixedMeq) {
    /** Lowest pH of a curve. */
    public static final double LOWEST_PH = 2;

    /** Highest pH of a curve. */
    public static final double HIGHEST_PH = 11;

    private static final double STEP_PH = 0.05;

    /**
     * The same laid out as natural cubic splines every 0.05 pH, for functions that are costly. Error on carbonate curves:
     * below 1e-5 of the buffering.
     */
    public static TitrationCurve tabulated(DoubleUnaryOperator scaledMeq, DoubleUnaryOperator fixedMeq) {
        return new TitrationCurve(spline(scaledMeq, LOWEST_PH, HIGHEST_PH), spline(fixedMeq, LOWEST_PH, HIGHEST_PH));
    }

    /** A function as a natural cubic spline; beyond its ends it goes on level. */
    static DoubleUnaryOperator spline(DoubleUnaryOperator function, double lowestPh, double highestPh) {
        int steps = Math.max(4, (int) Math.round((highestPh - lowestPh) / STEP_PH));
        double[] x = new double[steps + 1];
        double[] y = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            x[i] = lowestPh + (highestPh - lowestPh) * i / steps;
            y[i] = function.applyAsDouble(x[i]);
        }
        UnivariateFunction spline = new SplineInterpolator().interpolate(x, y);
        return ph -> spline.value(Math.max(x[0], Math.min(x[steps], ph)));
    }

    /** Both parts together at a factor, mEq. */
    double meq(double ph, double scale) {
        return scale * scaledMeq.applyAsDouble(ph) + fixedMeq.applyAsDouble(ph);
    }

    /** Buffering at a factor, mEq per pH, above 0; central difference over 0.002 pH. */
    double bufferingMeqPerPh(double ph, double scale) {
        double half = 0.001;
        return (meq(ph - half, scale) - meq(ph + half, scale)) / (2 * half);
    }
}
