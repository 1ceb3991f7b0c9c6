package tunside.water;

import java.util.List;
import java.util.Map;
import tunside.chemistry.Ion;
import tunside.finding.Finding;
import tunside.finding.Outcome;

/**
 * Whether cations and anions of a report match.
 *
 * @param cationsMeqPerL sum of the cations
 * @param anionsMeqPerL sum of the anions, alkalinity included
 */
public record IonBalance(double cationsMeqPerL, double anionsMeqPerL) {
    private static final List<Ion> NEEDED = List.of(Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.CHLORIDE, Ion.SULFATE);

    /** Difference allowed up to 3 mEq/L of anions, mEq/L (SM-1030E). */
    private static final double SOFT_LIMIT_MEQ_PER_L = 0.2;

    private static final double SOFT_ANIONS_MEQ_PER_L = 3;

    /** Difference allowed above, percent of the sum (COMMON-PRACTICE; SM-1030E asks for 2 % up to 10 mEq/L). */
    private static final double LIMIT_PERCENT = 5;

    static IonBalance of(WaterReport report, double alkalinityMeqPerL) {
        double cations = 0;
        double anions = alkalinityMeqPerL;
        for (Map.Entry<Ion, Double> entry : report.mmolPerL().entrySet()) {
            double meq = entry.getKey().charge() * entry.getValue();
            if (meq > 0) {
                cations += meq;
            } else {
                anions -= meq;
            }
        }
        return new IonBalance(cations, anions);
    }

    static boolean canBeJudged(WaterReport report) {
        return report.mmolPerL().keySet().containsAll(NEEDED)
                && report.alkalinity().isPresent();
    }

    /** Percent of the sum; positive where cations are in excess; zero for pure water. */
    public double percent() {
        double sum = cationsMeqPerL + anionsMeqPerL;
        return sum == 0 ? 0 : 100 * (cationsMeqPerL - anionsMeqPerL) / sum;
    }

    Finding finding() {
        if (anionsMeqPerL <= SOFT_ANIONS_MEQ_PER_L) {
            double difference = Math.abs(cationsMeqPerL - anionsMeqPerL);
            return Finding.of(
                    "water.ion-balance-soft",
                    difference <= SOFT_LIMIT_MEQ_PER_L ? Outcome.PASS : Outcome.CAUTION,
                    "",
                    difference,
                    SOFT_LIMIT_MEQ_PER_L);
        }
        return Finding.of(
                "water.ion-balance",
                Math.abs(percent()) <= LIMIT_PERCENT ? Outcome.PASS : Outcome.CAUTION,
                "",
                percent(),
                LIMIT_PERCENT);
    }
}
