package tunside.water;

import java.util.List;
import java.util.Map;
import tunside.chemistry.Ion;
import tunside.chemistry.IonAmounts;
import tunside.finding.Finding;
import tunside.finding.Outcome;

/**
 * Whether cations and anions of a report match; the limits stand in {@code water-limits.csv} (SM-1030E).
 *
 * @param cationsMeqPerL sum of the cations
 * @param anionsMeqPerL sum of the anions, alkalinity included
 */
public record IonBalance(double cationsMeqPerL, double anionsMeqPerL) {
    private static final List<Ion> NEEDED = List.of(Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.CHLORIDE, Ion.SULFATE);

    /** Of a report whose alkalinity has been read. */
    public static IonBalance of(WaterReport report, double alkalinityMeqPerL) {
        return of(report.mmolPerL(), alkalinityMeqPerL);
    }

    static IonBalance of(Map<Ion, Double> mmolPerL, double alkalinityMeqPerL) {
        double cations = 0;
        double anions = alkalinityMeqPerL;
        for (Ion ion : Ion.ALL) {
            double meq = meqPerL(mmolPerL, ion);
            if (meq > 0) {
                cations += meq;
            } else {
                anions -= meq;
            }
        }
        return new IonBalance(cations, anions);
    }

    /** What an ion brings, negative for an anion; 0 where it is not listed. */
    static double meqPerL(Map<Ion, Double> mmolPerL, Ion ion) {
        return ion.charge() * IonAmounts.amount(mmolPerL, ion);
    }

    /** Whether enough is reported: calcium, magnesium, sodium, chloride, sulfate and an alkalinity. */
    public static boolean canBeJudged(WaterReport report) {
        return report.mmolPerL().keySet().containsAll(NEEDED)
                && report.alkalinityMeqPerL().isPresent();
    }

    /** Cations less anions. */
    public double differenceMeqPerL() {
        return cationsMeqPerL - anionsMeqPerL;
    }

    /** Percent of the sum; positive where cations are in excess; zero for pure water. */
    public double percent() {
        double sum = cationsMeqPerL + anionsMeqPerL;
        return sum == 0 ? 0 : 100 * differenceMeqPerL() / sum;
    }

    /** Passed within the standard's limit, a note within what is usual, a caution beyond. */
    Finding finding() {
        WaterLimits.Limit accepted = WaterLimits.of("ion-balance", anionsMeqPerL);
        WaterLimits.Limit usual = WaterLimits.of("ion-balance-usual", anionsMeqPerL);
        double observed = accepted.isPercent() ? percent() : differenceMeqPerL();
        String code = accepted.isPercent() ? "water.ion-balance" : "water.ion-balance-soft";
        if (accepted.accepts(observed)) {
            return Finding.of(code, Outcome.PASS, "", observed, accepted.high());
        }
        return usual.accepts(observed)
                ? Finding.of(code, Outcome.NOTE, "", observed, accepted.high())
                : Finding.of(code, Outcome.CAUTION, "", observed, usual.high());
    }
}
