package tunside.review;

import java.util.List;
import tunside.dosing.PhReading;
import tunside.mash.Addition;
import tunside.mash.GristPart;
import tunside.mash.Malt;
import tunside.mash.Mash;

/**
 * A past mash with what was measured on it.
 *
 * @param label its name in findings
 * @param mash with everything that was in it at the first reading, by a model without experience
 * @param first reading of the cooled sample, before any dose
 * @param doses added after the first reading, in their order, at most 8
 */
public record MeasuredBrew(String label, Mash mash, PhReading first, List<Dose> doses) {
    /** Most doses of one brew. */
    public static final int MOST_DOSES = 8;

    public MeasuredBrew {
        doses = List.copyOf(doses);
        if (doses.size() > MOST_DOSES) {
            throw new IllegalArgumentException(
                    "a brew must have at most %s doses but has %s".formatted(MOST_DOSES, doses.size()));
        }
        if (!mash.model().experience().parameters().isEmpty()) {
            throw new IllegalArgumentException("a brew is reviewed against published values: leave its experience out");
        }
        dosed(mash, doses);
    }

    /** What was added, and the reading after it. */
    public record Dose(Addition addition, PhReading after) {}

    /** The mash with all its doses. */
    Mash dosed() {
        return dosed(mash, doses);
    }

    /** Its malts whose own pH is taken from their class. */
    List<Malt> maltsByClass() {
        return mash.grist().parts().stream()
                .map(GristPart::malt)
                .filter(Malt::isKnownByClass)
                .toList();
    }

    private static Mash dosed(Mash mash, List<Dose> doses) {
        Mash all = mash;
        for (Dose dose : doses) {
            all = all.plus(dose.addition());
        }
        return all;
    }
}
