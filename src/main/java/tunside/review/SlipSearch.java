package tunside.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
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
     * @param touched inputs or readings
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
            List<Candidate> ofSlip = slip.scale() == Slip.Scale.PH ? readings(slip) : inputs(slip);
            for (Candidate candidate : ofSlip) {
                candidates.add(
                        new Candidate(slip, candidate.subject(), candidate.touched(), slip.weight() / ofSlip.size()));
            }
        }
        return candidates;
    }

    /** Without doses a first reading alone is all readings. */
    private List<Candidate> readings(Slip slip) {
        int readings = equation.readings();
        return switch (slip.touches()) {
            case ALL ->
                List.of(new Candidate(slip, "", IntStream.range(0, readings).toArray(), 1));
            case FIRST -> readings == 1 ? List.of() : List.of(new Candidate(slip, "", new int[] {0}, 1));
            case EACH ->
                IntStream.range(1, readings)
                        .mapToObj(r -> new Candidate(slip, Integer.toString(r), new int[] {r}, 1))
                        .toList();
        };
    }

    /** Inputs of one subject go together: all additions of an acid share its bottle. All of one subject are that subject. */
    private List<Candidate> inputs(Slip slip) {
        Map<String, List<Integer>> bySubject = new LinkedHashMap<>();
        List<UncertainInput> inputs = equation.inputs();
        for (int i = 0; i < inputs.size(); i++) {
            if (inputs.get(i).id().equals(slip.input()) && (slip.scale() == Slip.Scale.ADD || values[i] > 0)) {
                bySubject
                        .computeIfAbsent(inputs.get(i).subject(), subject -> new ArrayList<>())
                        .add(i);
            }
        }
        if (slip.touches() == Slip.Touches.ALL) {
            return bySubject.size() < 2
                    ? List.of()
                    : List.of(new Candidate(
                            slip,
                            "",
                            bySubject.values().stream()
                                    .flatMap(List::stream)
                                    .mapToInt(Integer::intValue)
                                    .toArray(),
                            1));
        }
        return bySubject.entrySet().stream()
                .map(subject -> new Candidate(
                        slip,
                        subject.getKey(),
                        subject.getValue().stream().mapToInt(Integer::intValue).toArray(),
                        1))
                .toList();
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
            return equation.measured(candidate.touched()[0]);
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
            RealVector change = new ArrayRealVector(expected.length);
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
