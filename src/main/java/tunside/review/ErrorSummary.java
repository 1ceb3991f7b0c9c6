package tunside.review;

import java.util.Arrays;
import java.util.List;
import tunside.quantity.Interval90;

/**
 * Errors of a set of predictions, measured less predicted.
 *
 * @param n predictions
 * @param medianAbsolute middle of the errors' sizes, pH
 * @param rootMeanSquare pH
 * @param mean pH
 * @param within90 share of the errors inside their 90 % interval, the noise of reading counted in
 */
public record ErrorSummary(int n, double medianAbsolute, double rootMeanSquare, double mean, double within90) {

    /**
     * Of errors and their standard deviations.
     *
     * @param errors at least one
     */
    static ErrorSummary of(List<Double> errors, List<Double> deviations) {
        int n = errors.size();
        double[] sizes = errors.stream().mapToDouble(Math::abs).sorted().toArray();
        double squares = Arrays.stream(sizes).map(size -> size * size).sum();
        int within = 0;
        for (int i = 0; i < n; i++) {
            within += Math.abs(errors.get(i)) <= Interval90.HALF_WIDTH * deviations.get(i) ? 1 : 0;
        }
        return new ErrorSummary(
                n,
                (sizes[(n - 1) / 2] + sizes[n / 2]) / 2,
                Math.sqrt(squares / n),
                errors.stream().mapToDouble(Double::doubleValue).sum() / n,
                (double) within / n);
    }
}
