package tunside.dosing;

import java.util.Arrays;

/**
 * A costly curve laid out every 0.05 pH, with the polynomial of fifth degree through the six nearest points between them. A
 * point is computed when it is first needed, since a question visits few. Error on carbonate curves: below 1e-6 of the
 * buffering. Beyond its ends the curve goes on level.
 *
 * <p>For one thread at a time: a curve belongs to one question.
 */
final class TabulatedCurve implements PhCurve {
    private static final double STEP_PH = 0.05;
    private static final int POINTS = 6;
    private static final double[][] FROM_POINTS = fromPoints();

    private final PhCurve costly;
    private final double lowestPh;
    private final double highestPh;
    private final double perPh;
    private final double[][] pieces; // each point, and the polynomial from there by rising power once it is needed

    /**
     * A curve of which nothing is computed yet.
     *
     * @param highestPh above {@code lowestPh}
     */
    TabulatedCurve(PhCurve costly, double lowestPh, double highestPh) {
        int steps = Math.max(POINTS - 1, (int) Math.round((highestPh - lowestPh) / STEP_PH));
        this.costly = costly;
        this.lowestPh = lowestPh;
        this.highestPh = highestPh;
        this.perPh = steps / (highestPh - lowestPh);
        this.pieces = new double[steps + 1][];
    }

    @Override
    public double at(double ph) {
        double place = place(ph);
        int first = first(place);
        double[] c = piece(first);
        double u = place - first;
        return c[0] + u * (c[1] + u * (c[2] + u * (c[3] + u * (c[4] + u * c[5]))));
    }

    @Override
    public double slope(double ph) {
        if (ph < lowestPh || ph > highestPh) {
            return 0;
        }
        double place = place(ph);
        int first = first(place);
        double[] c = piece(first);
        double u = place - first;
        return perPh * (c[1] + u * (2 * c[2] + u * (3 * c[3] + u * (4 * c[4] + u * 5 * c[5]))));
    }

    private double place(double ph) {
        return (Math.max(lowestPh, Math.min(highestPh, ph)) - lowestPh) * perPh;
    }

    /** First of the six points about a place: two more on either side where there are so many. */
    private int first(double place) {
        return Math.max(0, Math.min(pieces.length - POINTS, (int) place - POINTS / 2 + 1));
    }

    /** Coefficients of the polynomial through six points, by rising power of the steps from the first. */
    private double[] piece(int first) {
        double[] piece = point(first);
        if (Double.isNaN(piece[1])) {
            Arrays.fill(piece, 1, POINTS, 0);
            for (int i = 0; i < POINTS; i++) {
                double value = point(first + i)[0];
                double[] toPowers = FROM_POINTS[i];
                for (int power = 1; power < POINTS; power++) {
                    piece[power] += toPowers[power] * value;
                }
            }
        }
        return piece;
    }

    private double[] point(int i) {
        double[] known = pieces[i];
        if (known != null) {
            return known;
        }
        double[] point = new double[POINTS];
        point[0] = costly.at(lowestPh + i / perPh);
        point[1] = Double.NaN;
        pieces[i] = point;
        return point;
    }

    /** Lagrange's polynomials on 0, 1 .. 5: what each point gives to each power. */
    private static double[][] fromPoints() {
        double[][] matrix = new double[POINTS][POINTS];
        for (int i = 0; i < POINTS; i++) {
            double[] product = new double[POINTS];
            product[0] = 1;
            int degree = 0;
            double scale = 1;
            for (int j = 0; j < POINTS; j++) {
                if (j != i) {
                    degree++;
                    for (int power = degree; power >= 0; power--) {
                        product[power] = (power > 0 ? product[power - 1] : 0) - j * product[power];
                    }
                    scale *= i - j;
                }
            }
            for (int power = 0; power < POINTS; power++) {
                matrix[i][power] = product[power] / scale;
            }
        }
        return matrix;
    }
}
