package tunside.chemistry;

import java.util.List;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/** The proton balance: the pH at which what some components take up is what the others give. */
public final class ProtonBalance {
    private static final double LOWEST = 0;
    private static final double HIGHEST = 14;
    private static final double USUAL_LOWEST = 4.5; // where nearly all mashes lie
    private static final double USUAL_HIGHEST = 6.5;
    private static final int MOST_EVALUATIONS = 200;

    private final ProtonTerm[] terms;

    /** @param terms at least one; each never rising with the pH, so the sum has one root */
    public ProtonBalance(List<ProtonTerm> terms) {
        this.terms = terms.toArray(new ProtonTerm[0]);
    }

    /** Protons that each component would take up. */
    public List<ProtonTerm> terms() {
        return List.of(terms);
    }

    /** Protons that all components together would still take up at a pH, mEq. */
    public double uptakeMeq(double ph) {
        double sum = 0;
        for (ProtonTerm term : terms) {
            sum += term.uptakeMeq(ph);
        }
        return sum;
    }

    /** Protons that lower the pH by one unit there, mEq per pH; central difference over 0.002 pH. */
    public double bufferingMeqPerPh(double ph) {
        double half = 0.001;
        return (uptakeMeq(ph - half) - uptakeMeq(ph + half)) / (2 * half);
    }

    /**
     * The pH of the mixture, solved to 1e-9 in at most 200 evaluations; 0 or 14 where so much acid or base is in it that it would
     * lie beyond.
     *
     * @throws IllegalArgumentException if the sum is no number at 0 or 14
     */
    public double solve() {
        if (holdsRoot(USUAL_LOWEST, USUAL_HIGHEST)) {
            return root(USUAL_LOWEST, USUAL_HIGHEST);
        }
        double atLowest = uptakeMeq(LOWEST);
        double atHighest = uptakeMeq(HIGHEST);
        if (Double.isNaN(atLowest) || Double.isNaN(atHighest)) {
            throw new IllegalArgumentException(
                    "the proton balance from pH %s to %s is no number".formatted(LOWEST, HIGHEST));
        }
        return atLowest < 0 ? LOWEST : atHighest > 0 ? HIGHEST : root(LOWEST, HIGHEST);
    }

    private boolean holdsRoot(double lowest, double highest) {
        return uptakeMeq(lowest) >= 0 && uptakeMeq(highest) <= 0;
    }

    private double root(double lowest, double highest) {
        BracketingNthOrderBrentSolver solver = new BracketingNthOrderBrentSolver(1e-12, 1e-9, 1e-12, 5);
        double ph = solver.solve(MOST_EVALUATIONS, this::uptakeMeq, lowest, highest);
        Solver.MASH.solved(solver.getEvaluations());
        return ph;
    }
}
