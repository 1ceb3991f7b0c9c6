package tunside.mash.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tunside.chemistry.Acids;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.PhRange;
import tunside.mash.PhRanges;

/** Checks of a question and of its plan. Every check that ran is reported, passed or not. */
public final class PlanChecks {
    private static final double LIKELY = 0.8;

    private PlanChecks() {}

    /** Whether the aim is usual, and whether its range was stated. */
    public static List<Finding> of(PhAim aim, boolean rangeStated) {
        PhRange usual = PhRanges.acceptedMash();
        double low = usual.lowPh().orElseThrow();
        double high = usual.highPh().orElseThrow();
        return List.of(
                Finding.of(
                        "plan.target",
                        usual.contains(aim.targetPh()) ? Outcome.PASS : Outcome.CAUTION,
                        "/targetPh",
                        aim.targetPh(),
                        aim.targetPh() < low ? low : high),
                Finding.of(
                        "plan.range",
                        rangeStated ? Outcome.PASS : Outcome.NOTE,
                        rangeStated ? "/lowPh" : "",
                        aim.lowPh(),
                        aim.highPh()));
    }

    /** Whether the limit of a supply was stated. */
    public static Finding most(PlanSupply supply, boolean stated) {
        return new Finding(
                "plan.most",
                stated ? Outcome.PASS : Outcome.NOTE,
                supply.pointer(),
                supply.name(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /** Checks of the plan. */
    public static List<Finding> of(PlanAnswer answer) {
        MashPlan plan = answer.best();
        PlanQuestion question = plan.question();
        List<Finding> findings = new ArrayList<>();
        if (question.hasAcid() || question.hasBase()) {
            findings.add(Finding.of(question.hasAcid() ? "plan.acid-in-mash" : "plan.base-in-mash", Outcome.NOTE, ""));
        }
        PhAim aim = question.aim();
        double ph = plan.prediction().ph();
        findings.add(Finding.of(
                "plan.ph",
                plan.score().phBeyond() <= PlanScore.NEGLIGIBLE ? Outcome.PASS : Outcome.CAUTION,
                "/targetPh",
                ph,
                ph < aim.lowPh() ? aim.lowPh() : ph > aim.highPh() ? aim.highPh() : aim.targetPh()));
        for (WantedValue wanted : WantedValue.of(answer)) {
            findings.add(wanted.finding());
        }
        findings.add(Finding.of(
                "plan.probability",
                plan.probabilityInRange() >= LIKELY ? Outcome.PASS : Outcome.NOTE,
                "",
                (double) Math.round(100 * plan.probabilityInRange()),
                100 * LIKELY));
        double lactate = plan.mgPerL(Acids.get("lactic").anion());
        findings.add(Finding.of(
                "plan.lactate-accepted",
                lactate <= question.mostLactateMgPerL() * (1 + 1e-9) ? Outcome.PASS : Outcome.CAUTION,
                "/mostLactate",
                lactate,
                question.mostLactateMgPerL()));
        return findings;
    }

    /**
     * Whether the plan keeps to what is usual of an anion.
     *
     * @param symbol of the ion in the liquor
     * @param name in words
     * @param usualMgPerL most that is usual
     */
    public static Finding usual(MashPlan plan, String symbol, String name, double usualMgPerL) {
        double mgPerL = plan.mgPerL(symbol);
        return Finding.of(
                        "plan.usual-ion",
                        mgPerL <= usualMgPerL ? Outcome.PASS : Outcome.CAUTION,
                        "",
                        mgPerL,
                        usualMgPerL)
                .about(name);
    }
}
