package tunside.dosing;

import java.util.List;
import java.util.Optional;

/**
 * A liquid whose pH is to be moved.
 *
 * @param curve how the liquid takes up protons
 * @param prior what is known of its buffering
 * @param start the first reading, before any addition of the history
 * @param sharedUncertainty standard uncertainty of the error that all readings have in common, 0 to 0.5
 * @param history additions and readings since, in their order, at most 40
 * @param aim where the pH is to go
 * @param acid at hand, if any
 * @param base at hand
 */
public record DoseQuestion(
        TitrationCurve curve,
        BufferingPrior prior,
        PhReading start,
        double sharedUncertainty,
        List<PastAddition> history,
        DoseAim aim,
        Optional<Supply> acid,
        Supply base) {
    /** Most entries of a history. */
    public static final int MOST_ENTRIES = 40;

    public DoseQuestion {
        history = List.copyOf(history);
        if (history.size() > MOST_ENTRIES) {
            throw new IllegalArgumentException(
                    "a history must have at most %s entries but has %s".formatted(MOST_ENTRIES, history.size()));
        }
        if (!(sharedUncertainty >= 0 && sharedUncertainty <= 0.5)) {
            throw new IllegalArgumentException(
                    "shared uncertainty (%s) must be from 0 to 0.5".formatted(sharedUncertainty));
        }
        if (acid.isEmpty() && lastReading(start, history).ph() > aim.highPh()) {
            throw new IllegalArgumentException("the pH lies above the range, so an acid is needed");
        }
    }

    /**
     * A question about a liquid. The acid's own uncertainty acts like one of the buffering and is carried there.
     *
     * @param acid at hand, as its liquid has it
     */
    public static DoseQuestion of(
            DosableLiquid liquid,
            PhReading start,
            double sharedUncertainty,
            List<PastAddition> history,
            DoseAim aim,
            Optional<Supply> acid,
            Supply base) {
        BufferingPrior prior = acid.map(
                        supply -> liquid.prior().widened(supply.reagent().relativeUncertainty()))
                .orElseGet(liquid::prior);
        return new DoseQuestion(
                liquid.curve(),
                prior,
                start,
                sharedUncertainty,
                history,
                aim,
                acid.map(supply ->
                        new Supply(supply.reagent().withoutUncertainty(), supply.stepGrams(), supply.mostGrams())),
                base);
    }

    /** What its history teaches. */
    BufferLearning learn() {
        return BufferLearning.of(curve, prior, start, sharedUncertainty, history);
    }

    /** The latest reading. */
    PhReading lastReading() {
        return lastReading(start, history);
    }

    private static PhReading lastReading(PhReading start, List<PastAddition> history) {
        PhReading last = start;
        for (PastAddition addition : history) {
            last = addition.after().orElse(last);
        }
        return last;
    }

    /** Whether nothing was added since the latest reading. */
    boolean endsWithReading() {
        return history.isEmpty() || history.get(history.size() - 1).after().isPresent();
    }
}
