package tunside.mash.plan;

import java.util.OptionalDouble;
import tunside.finding.Finding;
import tunside.finding.Outcome;

/**
 * A limit that is linear in the amounts: {@code slack + perUnit . amounts >= 0}, counted in multiples of what is natural to
 * it: an ion's limit, or a pH.
 *
 * @param code of the limit, as {@code checks-plan.csv} lists it
 * @param subject what is limited
 * @param pointer JSON Pointer to it, relative to the question
 * @param limit as stated
 * @param slack of the mash without a plan
 * @param perUnit change of the slack by one measure of each supply
 * @param scale slack of one unit of what is limited; 0 where it is not a plain amount, such as a ratio
 */
record PlanRow(
        String code, String subject, String pointer, double limit, double slack, double[] perUnit, double scale) {
    /** What is left of the limit; below 0 where it is passed. */
    double slack(double[] amounts) {
        double sum = slack;
        for (int i = 0; i < amounts.length; i++) {
            sum += perUnit[i] * amounts[i];
        }
        return sum;
    }

    /** How far the limit is passed; 0 where it holds. */
    double beyond(double[] amounts) {
        return Math.max(0, -slack(amounts));
    }

    /** The limit as a finding, with what a plan makes of it. */
    Finding finding(Outcome outcome, double[] amounts) {
        return new Finding(
                code,
                outcome,
                pointer,
                subject,
                scale == 0 ? OptionalDouble.empty() : OptionalDouble.of(limit + slack(amounts) / scale),
                OptionalDouble.of(limit));
    }

    /** The same limit given up. */
    PlanRow lifted() {
        return new PlanRow(code, subject, pointer, limit, 1, new double[perUnit.length], scale);
    }
}
