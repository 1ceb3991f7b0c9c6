package tunside.mash.plan;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import tunside.chemistry.Solver;

/**
 * The best plan of whole steps: branch and bound over which supplies are used. Each node allows some supplies and counts
 * some of them; its {@link RelaxedPlan} bounds what it can give and says what to try, which {@link StepSearch} settles.
 *
 * <p>First one supply that sets the pH at a time (an acid, acidulated malt, a base, or none) with salts and water; then,
 * where the best of those could still be beaten by more, all acids together or all bases together. Best bound first, ties in
 * order of coming; at most 300 nodes a search. Where there are few plans at all, as with coarse steps, each is tried instead: there
 * whole steps may lie far from any relaxed plan. Deterministic.
 */
final class PlanSearch {
    private static final int FEW_PLANS = 2000;
    private static final int MOST_NODES = 300;
    private static final int MOST_ROUNDS = 4;
    private static final double USED = 1e-6;
    private static final double GAP = 1e-6;

    private final PlanSpace space;

    PlanSearch(PlanSpace space) {
        this.space = space;
    }

    /** Supplies that the node counts, those that it allows, its bound, and when it came. */
    private record Node(boolean[] allowed, boolean[] counted, RelaxedPlan relaxed, int order) {}

    /** Whether a supply of this role may be used in this mash. */
    static boolean mayUse(PlanQuestion question, PlanSupply.Role role) {
        return switch (role) {
            case ACID -> !question.hasBase();
            case BASE -> !question.hasAcid();
            default -> true;
        };
    }

    /** Supplies that may go together with those that set the pH: salts and water. */
    boolean[] companions() {
        boolean[] allowed = new boolean[space.size()];
        for (int i = 0; i < allowed.length; i++) {
            PlanSupply.Role role = space.question().supplies().get(i).role();
            allowed[i] = role == PlanSupply.Role.SALT || role == PlanSupply.Role.WATER;
        }
        return allowed;
    }

    /** Companions and all supplies of a role, as far as the mash may have it. */
    boolean[] side(PlanSupply.Role role) {
        boolean[] allowed = companions();
        for (int i = 0; i < allowed.length; i++) {
            PlanSupply.Role own = space.question().supplies().get(i).role();
            allowed[i] |= own == role && mayUse(space.question(), role);
        }
        return allowed;
    }

    /** Best plan that sets the pH with one supply, or with none (-1). */
    StepPlan with(int setter) {
        boolean[] allowed = companions();
        boolean[] counted = new boolean[allowed.length];
        if (setter >= 0) {
            allowed[setter] = true;
            counted[setter] = true;
        }
        return search(allowed, counted, setter, StepPlan.none(space));
    }

    /** Best plan with all supplies of a role, if it beats the incumbent. */
    StepPlan together(PlanSupply.Role role, StepPlan incumbent) {
        boolean[] allowed = side(role);
        RelaxedPlan bound = RelaxedPlan.of(space, allowed, new boolean[allowed.length]);
        double shares = 0;
        for (int i = 0; i < allowed.length; i++) {
            shares += allowed[i] && space.most()[i] > 0 ? bound.amounts()[i] / space.most()[i] : 0;
        }
        if (bound.value() - shares + 2 >= incumbent.total()) {
            return incumbent; // two that set the pH count two at least
        }
        return search(allowed, new boolean[allowed.length], -1, incumbent);
    }

    private StepPlan search(boolean[] allowed, boolean[] counted, int setter, StepPlan incumbent) {
        return plans(allowed) <= FEW_PLANS
                ? bestOfAll(allowed, incumbent)
                : branchAndBound(allowed, counted, setter, incumbent);
    }

    /** How many plans of whole steps there are. */
    private double plans(boolean[] allowed) {
        double plans = 1;
        for (int i = 0; i < allowed.length; i++) {
            plans *= allowed[i] ? 1 + space.mostSteps(i) : 1;
        }
        return plans;
    }

    /** Tries each that adds something against the incumbent. */
    private StepPlan bestOfAll(boolean[] allowed, StepPlan incumbent) {
        StepPlan best = incumbent;
        int[] steps = new int[allowed.length];
        int tried = 1;
        int i = 0;
        while (i < steps.length) {
            if (allowed[i] && steps[i] < space.mostSteps(i)) {
                steps[i]++;
                i = 0;
                best = StepPlan.better(best, StepPlan.of(space, steps.clone()));
                tried++;
            } else {
                steps[i++] = 0;
            }
        }
        Solver.PLAN.solved(tried);
        return best;
    }

    /** Branches and bounds; where not all can be met, again with the buffering around what was found, while that helps. */
    private StepPlan branchAndBound(boolean[] allowed, boolean[] counted, int setter, StepPlan incumbent) {
        double[] around = RelaxedPlan.of(space, allowed, counted).amounts();
        StepPlan best = incumbent;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            StepPlan next = branchAndBound(space.around(around), allowed, counted, setter, best);
            boolean better = next.total() < best.total() - GAP;
            best = next;
            if (!better || requireNonNull(best.score()).meetsAll()) {
                return best;
            }
            around = best.amounts();
        }
        return best;
    }

    private StepPlan branchAndBound(
            PlanSpace around, boolean[] allowed, boolean[] counted, int setter, StepPlan incumbent) {
        PriorityQueue<Node> open = new PriorityQueue<>(
                Comparator.comparingDouble((Node node) -> node.relaxed.value()).thenComparingInt(Node::order));
        Map<List<Integer>, StepPlan> settled = new HashMap<>();
        StepPlan best = incumbent;
        int order = 0;
        open.add(new Node(allowed, counted, RelaxedPlan.of(around, allowed, counted), order));
        while (!open.isEmpty() && order < MOST_NODES) {
            Node node = open.poll();
            if (node.relaxed.value() >= best.total() - GAP) {
                break;
            }
            if (asCounted(node) < best.total()) {
                best = StepPlan.better(best, settle(node, setter, settled));
            }
            int branch = branch(node);
            if (branch < 0) {
                continue;
            }
            boolean[] more = node.counted.clone();
            more[branch] = true;
            boolean[] fewer = node.allowed.clone();
            fewer[branch] = false;
            open.add(new Node(node.allowed, more, RelaxedPlan.of(around, node.allowed, more), ++order));
            open.add(new Node(fewer, node.counted, RelaxedPlan.of(around, fewer, node.counted), ++order));
        }
        Solver.PLAN.solved(order + 1);
        return best;
    }

    /** What the node's relaxed plan is worth where each supply that it uses counts one. */
    private double asCounted(Node node) {
        double value = node.relaxed.value();
        for (int i = 0; i < node.allowed.length; i++) {
            if (node.allowed[i] && !node.counted[i] && share(node, i) > USED) {
                value += 1 - share(node, i);
            }
        }
        return value;
    }

    private StepPlan settle(Node node, int setter, Map<List<Integer>, StepPlan> settled) {
        List<Integer> used = new ArrayList<>();
        int sets = setter;
        double most = 0;
        for (int i = 0; i < node.allowed.length; i++) {
            double share = share(node, i);
            if (node.allowed[i] && space.most()[i] > 0 && (node.counted[i] || share > USED)) {
                used.add(i);
                PlanSupply.Role role = space.question().supplies().get(i).role();
                boolean canSet = role == PlanSupply.Role.ACID || role == PlanSupply.Role.BASE;
                if (setter < 0 && canSet && share > most && share < 1 - USED) {
                    sets = i;
                    most = share;
                }
            }
        }
        int setsPh = used.contains(sets) ? sets : -1;
        List<Integer> start = new ArrayList<>(used);
        start.add(setsPh);
        for (int i : used) {
            double exact = node.relaxed.amounts()[i]
                    / space.question().supplies().get(i).step();
            start.add((int) Math.min(Integer.MAX_VALUE, Math.round(2 * exact)));
        }
        return settled.computeIfAbsent(start, key -> StepSearch.from(space, node.relaxed.amounts(), used, setsPh));
    }

    private double share(Node node, int i) {
        return space.most()[i] > 0 ? node.relaxed.amounts()[i] / space.most()[i] : 0;
    }

    /** The uncounted supply of which the largest share is used; -1 where there is none. */
    private int branch(Node node) {
        int branch = -1;
        double largest = USED;
        for (int i = 0; i < node.allowed.length; i++) {
            if (node.allowed[i] && !node.counted[i] && share(node, i) > largest) {
                branch = i;
                largest = share(node, i);
            }
        }
        return branch;
    }
}
