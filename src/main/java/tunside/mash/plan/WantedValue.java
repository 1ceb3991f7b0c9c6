package tunside.mash.plan;

import java.util.List;
import java.util.OptionalDouble;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.Addition;
import tunside.mash.Mash;
import tunside.mash.MashPrediction;
import tunside.mash.SaltAddition;

/**
 * A range that is wanted, and what the plan makes of it.
 *
 * @param want which
 * @param before value in the mash without a plan; absent where a ratio has no sulfate under it
 * @param after value with the plan
 */
public record WantedValue(IonWant want, OptionalDouble before, OptionalDouble after) {
    private static final double ROUNDING = 1e-7;

    /** All that a question wants. */
    public static List<WantedValue> of(PlanAnswer answer) {
        MashPlan plan = answer.best();
        PlanQuestion question = plan.question();
        return question.wants().stream()
                .map(want -> new WantedValue(
                        want,
                        value(want, question.mash(), answer.before()),
                        value(want, plan.mash(), plan.prediction())))
                .toList();
    }

    /** Whether the plan's value lies in the range. */
    public boolean met() {
        double value = after.orElse(Double.POSITIVE_INFINITY);
        return value >= want.low().orElse(0) * (1 - ROUNDING) - ROUNDING
                && value <= want.high().orElse(Double.POSITIVE_INFINITY) * (1 + ROUNDING) + ROUNDING;
    }

    Finding finding() {
        double value = after.orElse(Double.POSITIVE_INFINITY);
        OptionalDouble end = want.low().isPresent()
                        && (value < want.low().getAsDouble() || want.high().isEmpty())
                ? want.low()
                : want.high();
        return new Finding("plan.wanted", met() ? Outcome.PASS : Outcome.CAUTION, want.pointer(), title(), after, end);
    }

    private String title() {
        return want.kind() == IonWant.Kind.CHLORIDE_TO_SULFATE
                ? want.name()
                : "%s (%s)".formatted(want.name(), want.unit());
    }

    private static OptionalDouble value(IonWant want, Mash mash, MashPrediction prediction) {
        return switch (want.kind()) {
            case ION ->
                OptionalDouble.of(mgPerL(prediction, want.ion().orElseThrow().symbol()));
            case ALKALINITY -> OptionalDouble.of(alkalinityMeqPerL(mash));
            case CHLORIDE_TO_SULFATE -> {
                double sulfate = mgPerL(prediction, "SO4");
                yield sulfate > 0 ? OptionalDouble.of(mgPerL(prediction, "Cl") / sulfate) : OptionalDouble.empty();
            }
        };
    }

    private static double mgPerL(MashPrediction prediction, String symbol) {
        return prediction.ions().stream()
                .filter(ion -> ion.symbol().equals(symbol))
                .mapToDouble(ion -> ion.mgPerL())
                .sum();
    }

    /** Alkalinity of a mash's liquor with its salts and bases, before any acid, mEq/L. */
    static double alkalinityMeqPerL(Mash mash) {
        double alkalinity = mash.liquor().alkalinityMeqPerL();
        for (Addition addition : mash.additions()) {
            if (addition instanceof SaltAddition salt) {
                double grams = salt.mass().grams();
                double dissolved = salt.isChalk()
                        ? mash.model().chalkDissolved().value() * Math.min(grams, mash.chalkLimitGrams())
                        : grams;
                alkalinity += dissolved
                        * salt.salt().alkalinityMeqPerGram()
                        / mash.liquor().volume().litres();
            }
        }
        return alkalinity;
    }
}
