package tunside.mash.plan;

import java.util.ArrayList;
import java.util.List;
import tunside.finding.Finding;
import tunside.mash.MashPrediction;

/**
 * The best plan, what else could be done, and what limits it.
 *
 * @param before the mash without a plan
 * @param best by {@link PlanScore}
 * @param alternatives the best plan with each other supply that can set the pH, best first
 * @param binding limits that the best plan has come up against
 * @param obstacles what keeps it from meeting all; empty where it does
 */
public record PlanAnswer(
        MashPrediction before,
        MashPlan best,
        List<MashPlan> alternatives,
        List<Finding> binding,
        List<PlanObstacle> obstacles) {
    public PlanAnswer {
        alternatives = List.copyOf(alternatives);
        binding = List.copyOf(binding);
        obstacles = List.copyOf(obstacles);
    }

    /** How a question came out. */
    public enum Result {
        /** The mash meets all as it is. */
        NONE_NEEDED,
        /** The additions meet all. */
        PLAN,
        /** Not all can be met; this comes nearest. */
        NEAREST_REACHABLE
    }

    /** Plans and whole candidates with the supply that sets the pH. */
    private record Tried(List<StepPlan> plans, StepPlan best) {}

    /** Searches. Some milliseconds. */
    public static PlanAnswer of(PlanQuestion question) {
        MashPrediction before = MashPrediction.of(question.mash());
        PlanSpace space = PlanSpace.of(question, before);
        Tried tried = tried(space);
        MashPlan best = MashPlan.of(space, tried.best());
        List<MashPlan> alternatives = new ArrayList<>();
        for (int i = 0; i < space.size(); i++) {
            StepPlan plan = tried.plans().get(i);
            if (plan != null
                    && plan.steps()[i] > 0
                    && plan.total() > tried.best().total()) {
                alternatives.add(MashPlan.of(space, plan));
            }
        }
        alternatives.sort((one, other) ->
                Double.compare(one.score().total(), other.score().total()));
        return new PlanAnswer(
                before,
                best,
                alternatives,
                PlanLimits.binding(space, tried.best()),
                best.score().meetsAll() ? List.of() : PlanLimits.obstacles(space, before, tried.best()));
    }

    /** How it came out. */
    public Result result() {
        if (!best.score().meetsAll()) {
            return Result.NEAREST_REACHABLE;
        }
        return best.additions().isEmpty() ? Result.NONE_NEEDED : Result.PLAN;
    }

    static StepPlan best(PlanSpace space) {
        return tried(space).best();
    }

    private static Tried tried(PlanSpace space) {
        PlanSearch search = new PlanSearch(space);
        StepPlan best = search.with(-1);
        List<StepPlan> plans = new ArrayList<>();
        for (int i = 0; i < space.size(); i++) {
            PlanSupply.Role role = space.question().supplies().get(i).role();
            boolean sets = (role == PlanSupply.Role.ACID || role == PlanSupply.Role.BASE)
                    && PlanSearch.mayUse(space.question(), role)
                    && space.most()[i] > 0;
            StepPlan plan = sets ? search.with(i) : null;
            plans.add(plan);
            best = plan == null ? best : StepPlan.better(best, plan);
        }
        best = search.together(PlanSupply.Role.ACID, best);
        best = search.together(PlanSupply.Role.BASE, best);
        return new Tried(plans, best);
    }
}
