package tunside.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.RealVector;
import tunside.mash.UncertainInput;

/** Tries every slip on a brew that the others do not explain, and weighs them by their evidence. */
final class SlipSearch {
    private static final int STEPS = 12;
    private static final double FARTHEST_SPREADS = 3.5;
    private static final double EXPLAINED = 2;
    private static final double RELATIVE_STEP = 0.01;

    private final BrewEquation equation;
    private final double[] values;
    private final double[] expected;
    private final Departure departure;
    private final DecompositionSolver weigh;

    private SlipSearch(BrewEquation equation, RealVector parameters, Departure departure) {
        this.equation = equation;
        this.values = equation.values(parameters, equation.ownCentre());
        this.expected = equation.expected(values);
        this.departure = departure;
        this.weigh = new CholeskyDecomposition(departure.covariance(), 1e-6, 0).getSolver();
    }

    /**
     * One slip of one subject.
     *
     * @param touched inputs, or one reading, or none for all readings
     */
    private record Candidate(Slip slip, String subject, int[] touched, double weight) {}

    private record Tried(SuspectedSlip suspect, double logEvidence) {}

    /**
     * Slips, the most likely first, with weights that sum to 1 over all that were tried. Each takes the size that is most
     * probable (Gauss-Newton on the balance, within 3.5 spreads); its evidence is Laplace's approximation around there.
     *
     * @param departure of the readings from what the other brews let expect
     */
    static List<SuspectedSlip> of(BrewEquation equation, RealVector parameters, Departure departure) {
        SlipSearch search = new SlipSearch(equation, parameters, departure);
        List<Tried> tried = search.candidates().stream().map(search::attempt).toList();
        double best = tried.stream().mapToDouble(Tried::logEvidence).max().orElse(0);
        double sum = tried.stream()
                .mapToDouble(one -> Math.exp(one.logEvidence() - best))
                .sum();
        return tried.stream()
                .map(one -> new SuspectedSlip(
                        one.suspect().slip(),
                        one.suspect().subject(),
                        one.suspect().stated(),
                        one.suspect().needed(),
                        Math.exp(one.logEvidence() - best) / sum,
                        one.suspect().explains()))
                .sorted(Comparator.comparingDouble(SuspectedSlip::weight).reversed())
                .toList();
    }

    private List<Candidate> candidates() {
        List<Candidate> candidates = new ArrayList<>();
        for (Slip slip : Slip.all()) {
            List<Candidate> ofSlip = new ArrayList<>();
            if (slip.scale() == Slip.Scale.PH) {
                boolean meter = slip.id().equals("meter");
                for (int r = 1; r < (meter ? 2 : equation.readings()); r++) {
                    ofSlip.add(new Candidate(
                            slip, meter ? "" : Integer.toString(r), meter ? new int[0] : new int[] {r}, 1));
                }
            } else {
                inputs(slip, ofSlip);
            }
            for (Candidate candidate : ofSlip) {
                candidates.add(
                        new Candidate(slip, candidate.subject(), candidate.touched(), slip.weight() / ofSlip.size()));
            }
        }
        return candidates;
    }

    /** Inputs of one subject go together: all additions of an acid share its bottle. */
    private void inputs(Slip slip, List<Candidate> candidates) {
        List<String> subjects = new ArrayList<>();
        List<UncertainInput> inputs = equation.inputs();
        for (UncertainInput input : inputs) {
            if (input.id().equals(slip.input()) && !subjects.contains(input.subject())) {
                subjects.add(input.subject());
            }
        }
        for (String subject : subjects) {
            int[] touched = java.util.stream.IntStream.range(0, inputs.size())
                    .filter(i -> inputs.get(i).id().equals(slip.input())
                            && inputs.get(i).subject().equals(subject)
                            && (slip.scale() == Slip.Scale.ADD || values[i] > 0))
                    .toArray();
            if (touched.length > 0) {
                candidates.add(new Candidate(slip, subject, touched, 1));
            }
        }
    }

    private Tried attempt(Candidate candidate) {
        double spread = candidate.slip().spread();
        double size = 0;
        RealVector change = change(candidate, 0);
        double curvature = 0;
        for (int step = 0; step < STEPS; step++) {
            double half = RELATIVE_STEP * spread;
            RealVector slope = change(candidate, size + half)
                    .subtract(change(candidate, size - half))
                    .mapDivide(2 * half);
            RealVector weighted = weigh.solve(slope);
            curvature = weighted.dotProduct(slope) + 1 / (spread * spread);
            double pull = weighted.dotProduct(departure.residual().subtract(change)) - size / (spread * spread);
            double farthest = FARTHEST_SPREADS * spread;
            double next = Math.max(size - spread, Math.min(size + spread, size + pull / curvature));
            size = Math.max(-farthest, Math.min(farthest, next));
            change = change(candidate, size);
        }
        RealVector left = departure.residual().subtract(change);
        double misfit = weigh.solve(left).dotProduct(left) + size * size / (spread * spread);
        boolean explains = Math.abs(new Departure(left, departure.covariance()).farthest()) <= EXPLAINED;
        double stated = stated(candidate);
        double needed = candidate.slip().scale() == Slip.Scale.TIMES
                ? stated * Math.exp(size)
                : candidate.slip().scale() == Slip.Scale.ADD ? stated + size : stated - size;
        return new Tried(
                new SuspectedSlip(candidate.slip(), candidate.subject(), stated, needed, 0, explains),
                Math.log(candidate.weight()) - 0.5 * misfit - 0.5 * Math.log(spread * spread * curvature));
    }

    private double stated(Candidate candidate) {
        if (candidate.slip().scale() == Slip.Scale.PH) {
            return equation.measured(
                    candidate.touched().length == 0 ? 0 : candidate.touched()[0]);
        }
        double sum = 0;
        for (int input : candidate.touched()) {
            sum += values[input];
        }
        return sum;
    }

    /** Change of the expected readings by a slip of a size. */
    private RealVector change(Candidate candidate, double size) {
        if (candidate.slip().scale() == Slip.Scale.PH) {
            RealVector change = new ArrayRealVector(expected.length, candidate.touched().length == 0 ? size : 0);
            for (int reading : candidate.touched()) {
                change.setEntry(reading, size);
            }
            return change;
        }
        double[] moved = values.clone();
        for (int input : candidate.touched()) {
            moved[input] =
                    candidate.slip().scale() == Slip.Scale.TIMES ? moved[input] * Math.exp(size) : moved[input] + size;
        }
        return new ArrayRealVector(equation.expected(moved)).subtract(new ArrayRealVector(expected));
    }
}
