package tunside.mash.plan;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Salts;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.MashPrediction;
import tunside.quantity.Strength;
import tunside.water.Water;

/** Which limits hold a plan: those that it has come up against, and those that keep it from meeting all that is wanted. */
final class PlanLimits {
    private static final double NEGLIGIBLE = 1e-6;
    /** What stands for a supply without limit, mmol per litre of liquor. */
    private static final double PLENTY_MMOL_PER_L = 100;

    /** How much more acidulated malt is tried, kg per kg of grist. */
    private static final double MORE_MALT = 0.1;

    /** A gain of a relaxed plan that whole steps may eat up. */
    private static final double LITTLE = 0.03;

    /** A limit matters where giving it up takes away this share of what is missing. */
    private static final double TELLING = 0.02;

    private static final double FINER = 100;

    private final PlanSpace space;
    private final StepPlan best;
    private final PlanSearch search;
    private final List<PlanObstacle> obstacles = new ArrayList<>();

    private PlanLimits(PlanSpace space, StepPlan best) {
        this.space = space;
        this.best = best;
        this.search = new PlanSearch(space);
    }

    /** Limits that one more step of an addition of the plan would pass. */
    static List<Finding> binding(PlanSpace space, StepPlan plan) {
        List<Finding> binding = new ArrayList<>();
        double[] amounts = plan.amounts();
        for (int i = 0; i < amounts.length; i++) {
            PlanSupply supply = space.question().supplies().get(i);
            if (amounts[i] > 0 && amounts[i] + supply.step() > space.most()[i] * (1 + 1e-12)) {
                binding.add(amount(space, i, amounts[i], Outcome.NOTE));
            }
        }
        if (near(space, space.lactate(), amounts)) {
            binding.add(space.lactate().finding(Outcome.NOTE, amounts));
        }
        for (PlanRow want : space.wants()) {
            if (want.slack(amounts) >= 0 && near(space, want, amounts)) {
                binding.add(want.finding(Outcome.NOTE, amounts));
            }
        }
        return binding;
    }

    /** Whether a step of what the plan uses takes it past a limit. */
    private static boolean near(PlanSpace space, PlanRow row, double[] amounts) {
        double largest = 0;
        for (int i = 0; i < amounts.length; i++) {
            if (amounts[i] > 0) {
                largest = Math.max(
                        largest,
                        Math.abs(row.perUnit()[i])
                                * space.question().supplies().get(i).step());
            }
        }
        return row.slack(amounts) < largest;
    }

    private static boolean isChalk(PlanSupply supply) {
        return supply instanceof PlanSupply.OfSalt salt && salt.addition(0).isChalk();
    }

    private static Finding amount(PlanSpace space, int index, double observed, Outcome outcome) {
        PlanSupply supply = space.question().supplies().get(index);
        double litres = space.question().mash().liquor().volume().litres();
        double kilograms = space.question().mash().grist().kilograms();
        double most = space.most()[index];
        boolean chalk = isChalk(supply) && most < supply.mostSteps() * supply.step();
        if (supply instanceof PlanSupply.OfWater) {
            return Finding.of(
                            supply.limitCode(),
                            outcome,
                            supply.limitPointer(),
                            100 * observed / litres,
                            100 * supply.most() / litres)
                    .about(supply.name());
        }
        if (supply instanceof PlanSupply.OfMalt) {
            return Finding.of(
                            supply.limitCode(),
                            outcome,
                            supply.limitPointer(),
                            100 * observed / (kilograms + observed),
                            100 * supply.most() / (kilograms + supply.most()))
                    .about(supply.name());
        }
        return Finding.of(
                        chalk ? "plan.chalk" : supply.limitCode(),
                        outcome,
                        chalk ? supply.pointer() : supply.limitPointer(),
                        observed,
                        chalk ? most : supply.most())
                .about(supply.name());
    }

    /** What stands in the way of a plan that does not meet all; that which is enough alone first. */
    static List<PlanObstacle> obstacles(PlanSpace space, MashPrediction before, StepPlan plan) {
        return new PlanLimits(space, plan).obstacles(before);
    }

    private List<PlanObstacle> obstacles(MashPrediction before) {
        double now = nearest(space);
        if (now <= NEGLIGIBLE) {
            steps(before);
        } else {
            amounts(now);
            lactate(now, best.amounts());
            rules(now, before);
            ranges(now, best.amounts());
        }
        if (obstacles.isEmpty()) {
            passed();
        }
        obstacles.sort(Comparator.comparing(PlanObstacle::enoughAlone).reversed());
        return obstacles;
    }

    /** The least that pH and ions must lie outside, whichever way the pH is set. */
    private static double nearest(PlanSpace space) {
        PlanSearch search = new PlanSearch(space);
        return Math.min(
                RelaxedPlan.nearest(space, search.side(PlanSupply.Role.ACID)).beyond(),
                RelaxedPlan.nearest(space, search.side(PlanSupply.Role.BASE)).beyond());
    }

    /** Where nothing else tells: the ends of ranges that the plan itself passes. */
    private void passed() {
        double now = beyond(best);
        for (PlanRow want : space.wants()) {
            found(want.finding(Outcome.CAUTION, best.amounts()), now, now - want.beyond(best.amounts()));
        }
        PhAim aim = space.question().aim();
        double ph = space.protons().ph(best.amounts());
        boolean low = ph < aim.lowPh();
        found(
                Finding.of(
                        low ? "plan.ph-low" : "plan.ph-high",
                        Outcome.CAUTION,
                        low ? "/lowPh" : "/highPh",
                        ph,
                        low ? aim.lowPh() : aim.highPh()),
                now,
                now - aim.beyond(ph));
    }

    /** Adds a limit whose giving up tells; where it tells little, only if a plan of whole steps gains by it too. */
    private void tried(Finding limit, double now, PlanSpace without) {
        double then = nearest(without);
        if (tells(now, then)
                && (now - then >= LITTLE || PlanAnswer.best(without).total() < best.total() - NEGLIGIBLE)) {
            obstacles.add(new PlanObstacle(limit, now, then));
        }
    }

    private void found(Finding limit, double now, double then) {
        if (tells(now, then)) {
            obstacles.add(new PlanObstacle(limit, now, then));
        }
    }

    private static boolean tells(double now, double then) {
        return then < now * (1 - TELLING) - NEGLIGIBLE;
    }

    private void amounts(double now) {
        double litres = space.question().mash().liquor().volume().litres();
        for (int i = 0; i < space.size(); i++) {
            PlanSupply supply = space.question().supplies().get(i);
            double[] more = space.most().clone();
            if (supply instanceof PlanSupply.OfWater) {
                more[i] = litres;
            } else if (supply instanceof PlanSupply.OfMalt) {
                more[i] += MORE_MALT * space.question().mash().grist().kilograms();
            } else if (isChalk(supply) && more[i] < supply.mostSteps() * supply.step()) {
                continue; // more of it does nothing
            } else {
                more[i] = PLENTY_MMOL_PER_L * litres / supply.millimolesPerUnit();
            }
            if (more[i] > space.most()[i]) {
                tried(amount(space, i, space.most()[i], Outcome.CAUTION), now, space.withMost(more));
            }
        }
    }

    private void lactate(double now, double[] amounts) {
        PlanRow row = space.lactate();
        tried(row.finding(Outcome.CAUTION, amounts), now, space.withLactate(row.lifted()));
    }

    /** That acid and base never go in together, and that there may be neither at hand. */
    private void rules(double now, MashPrediction before) {
        boolean[] all = search.companions();
        for (int i = 0; i < all.length; i++) {
            all[i] = true;
        }
        found(
                Finding.of("plan.acid-and-base", Outcome.CAUTION, "/atHand"),
                now,
                RelaxedPlan.nearest(space, all).beyond());
        double litres = space.question().mash().liquor().volume().litres();
        if (lacks(PlanSupply.Role.ACID)) {
            AcidProduct acid = AcidProduct.of(Acids.get("phosphoric"), Strength.percent(10));
            PlanSupply some = new PlanSupply.OfAcid("/atHand/acids", acid, 0.1, 100 * litres);
            tried(Finding.of("plan.no-acid", Outcome.CAUTION, "/atHand/acids"), now, with(some, before));
        }
        if (lacks(PlanSupply.Role.WATER)) {
            PlanSupply some = new PlanSupply.OfWater("/atHand/dilutingWater", Water.distilled(), 0.1, litres);
            tried(Finding.of("plan.no-water", Outcome.CAUTION, "/atHand/dilutingWater"), now, with(some, before));
        }
        if (lacks(PlanSupply.Role.BASE)) {
            PlanSupply some = new PlanSupply.OfSalt("/atHand/bases", Salts.get("sodium-bicarbonate"), 0.1, 8 * litres);
            tried(Finding.of("plan.no-base", Outcome.CAUTION, "/atHand/bases"), now, with(some, before));
        }
    }

    private boolean lacks(PlanSupply.Role role) {
        for (int i = 0; i < space.size(); i++) {
            if (space.question().supplies().get(i).role() == role && space.most()[i] > 0) {
                return false;
            }
        }
        return true;
    }

    private PlanSpace with(PlanSupply more, MashPrediction before) {
        PlanQuestion question = space.question();
        List<PlanSupply> supplies = new ArrayList<>(question.supplies());
        supplies.add(more);
        return PlanSpace.of(
                new PlanQuestion(
                        question.mash(),
                        question.water(),
                        question.aim(),
                        supplies,
                        question.wants(),
                        question.mostLactateMgPerL()),
                before);
    }

    private void ranges(double now, double[] amounts) {
        double ph = space.protons().ph(amounts);
        for (PlanRow want : space.wants()) {
            List<PlanRow> others = new ArrayList<>(space.wants());
            others.remove(want);
            tried(want.finding(Outcome.CAUTION, amounts), now, space.withWants(others));
        }
        PhAim aim = space.question().aim();
        tried(
                Finding.of("plan.ph-low", Outcome.CAUTION, "/lowPh", ph, aim.lowPh()),
                now,
                space.withAim(new PhAim(aim.targetPh(), 4, aim.highPh())));
        tried(
                Finding.of("plan.ph-high", Outcome.CAUTION, "/highPh", ph, aim.highPh()),
                now,
                space.withAim(new PhAim(aim.targetPh(), aim.lowPh(), 7.5)));
    }

    /** Any amounts would do, whole steps do not: which scale is too coarse? */
    private void steps(MashPrediction before) {
        double now = beyond(best);
        List<String> pointers = space.question().supplies().stream()
                .map(PlanSupply::stepPointer)
                .distinct()
                .toList();
        for (String pointer : pointers) {
            finer(now, before, pointer, pointer);
        }
        if (obstacles.isEmpty()) {
            finer(now, before, "/steps", "/");
        }
    }

    private void finer(double now, MashPrediction before, String pointer, String prefix) {
        PlanQuestion finer = space.question();
        double step = 0;
        for (int i = 0; i < space.size(); i++) {
            PlanSupply supply = finer.supplies().get(i);
            if (supply.stepPointer().startsWith(prefix)) {
                step = Math.max(step, supply.step());
                finer = finer.withSupply(i, supply.withStep(supply.step() / FINER));
            }
        }
        PlanSpace fine = PlanSpace.of(finer, before);
        found(Finding.of("plan.step", Outcome.CAUTION, pointer, step, step), now, beyond(PlanAnswer.best(fine)));
    }

    private static double beyond(StepPlan plan) {
        PlanScore score = requireNonNull(plan.score());
        return score.phBeyond() + score.ionsBeyond();
    }
}
