package tunside.electrode;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import tunside.quantity.Temperature;

/** Every way in which each cause can have come about in a session. */
final class CauseVariants {
    private static final double MOST_KELVIN_OFF = 30;
    private static final double MOST_SHARE_MISSING = 0.5;
    private static final double DIFFERENT_BUFFERS_PH = 0.3;
    private static final Set<BufferSubstance> ALKALINE = EnumSet.of(BufferSubstance.BORAX, BufferSubstance.CARBONATE);

    private final List<BufferReading> readings;
    private final double[] idealMv;

    CauseVariants(CalibrationSession session) {
        this.readings = session.readings();
        this.idealMv = new double[readings.size()];
        for (int i = 0; i < idealMv.length; i++) {
            idealMv[i] = ideal(readings.get(i).buffer().ph(), readings.get(i).temperature());
        }
    }

    /** The variants of a cause; empty where it cannot have happened. */
    List<CauseVariant> of(Cause cause) {
        return switch (cause) {
            case SOUND, CRACKED_BULB, COATED_BULB, WEAK_GLASS, UNEXPLAINED ->
                List.of(CauseVariant.fixed(List.of(), 1, idealMv));
            case NEUTRAL_BUFFER_IS_6_86 -> taken(BufferSubstance.TECHNICAL_PHOSPHATE, BufferSubstance.PHOSPHATE);
            case NEUTRAL_BUFFER_IS_7_00 -> taken(BufferSubstance.PHOSPHATE, BufferSubstance.TECHNICAL_PHOSPHATE);
            case ALKALINE_BUFFER_IS_9_18 -> taken(BufferSubstance.CARBONATE, BufferSubstance.BORAX);
            case ALKALINE_BUFFER_IS_10_01 -> taken(BufferSubstance.BORAX, BufferSubstance.CARBONATE);
            case SWAPPED_CUPS -> swapped();
            case WRONG_TEMPERATURE -> wrongTemperature();
            case WRONG_WATER_VOLUME -> wrongWater();
            case CARBON_DIOXIDE -> carbonDioxide();
            case SLOW_JUNCTION -> slowJunction();
        };
    }

    private static double ideal(double ph, Temperature temperature) {
        return -NernstSlope.millivoltsPerPh(temperature) * (ph - 7);
    }

    /** All cups of one substance were of another. */
    private List<CauseVariant> taken(BufferSubstance entered, BufferSubstance real) {
        List<Integer> touched = where(i -> substanceIs(i, entered));
        Buffer table = BufferCup.tableOf(real);
        if (touched.isEmpty()
                || !touched.stream().allMatch(i -> table.covers(readings.get(i).temperature()))) {
            return List.of();
        }
        double[] potentials = idealMv.clone();
        for (int i : touched) {
            Temperature temperature = readings.get(i).temperature();
            potentials[i] = ideal(table.ph(temperature), temperature);
        }
        return List.of(CauseVariant.fixed(touched, 1, potentials));
    }

    private boolean substanceIs(int reading, BufferSubstance substance) {
        return readings.get(reading).cup().substance().filter(substance::equals).isPresent();
    }

    private List<CauseVariant> swapped() {
        List<List<Integer>> pairs = new ArrayList<>();
        List<double[]> pictures = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            for (int j = i + 1; j < readings.size(); j++) {
                OptionalDouble here = phOf(j, readings.get(i).temperature());
                OptionalDouble there = phOf(i, readings.get(j).temperature());
                if (here.isPresent()
                        && there.isPresent()
                        && Math.abs(here.getAsDouble() - there.getAsDouble()) > DIFFERENT_BUFFERS_PH) {
                    double[] potentials = idealMv.clone();
                    potentials[i] = ideal(here.getAsDouble(), readings.get(i).temperature());
                    potentials[j] = ideal(there.getAsDouble(), readings.get(j).temperature());
                    pairs.add(List.of(i, j));
                    pictures.add(potentials);
                }
            }
        }
        return IntStream.range(0, pairs.size())
                .mapToObj(i -> CauseVariant.fixed(pairs.get(i), 1.0 / pairs.size(), pictures.get(i)))
                .toList();
    }

    private OptionalDouble phOf(int reading, Temperature at) {
        BufferReading of = readings.get(reading);
        return of.temperature().equals(at)
                ? OptionalDouble.of(of.buffer().ph())
                : of.cup().phIf(of.temperature(), at);
    }

    /** All cups, as by a bad probe, or one of them. */
    private List<CauseVariant> wrongTemperature() {
        return shared(List.copyOf(cups().values()), this::byTemperature);
    }

    private interface Variant {
        CauseVariant of(List<Integer> touched, double share);
    }

    /** Half of the prior to all groups together, the other half to each alone. */
    private static List<CauseVariant> shared(List<List<Integer>> groups, Variant variant) {
        List<CauseVariant> variants = new ArrayList<>();
        double together = groups.size() > 1 ? 0.5 : 0;
        for (List<Integer> group : groups) {
            variants.add(variant.of(group, (1 - together) / groups.size()));
        }
        if (groups.size() > 1) {
            variants.add(
                    variant.of(groups.stream().flatMap(List::stream).sorted().toList(), together));
        }
        return variants;
    }

    private CauseVariant byTemperature(List<Integer> touched, double share) {
        return new CauseVariant(touched, share, -MOST_KELVIN_OFF, MOST_KELVIN_OFF, kelvin -> {
            double[] potentials = idealMv.clone();
            for (int i : touched) {
                BufferReading reading = readings.get(i);
                double celsius = reading.temperature().celsius() + kelvin;
                if (!(celsius >= -10 && celsius <= 100)) {
                    return unreachable();
                }
                Temperature real = new Temperature(celsius);
                OptionalDouble ph = reading.cup().substance().isEmpty()
                        ? OptionalDouble.of(reading.buffer().ph())
                        : reading.cup().phIf(reading.temperature(), real);
                potentials[i] = ph.isPresent() ? ideal(ph.getAsDouble(), real) : Double.NaN;
            }
            return potentials;
        });
    }

    /** One cup, or all that may have been powders. */
    private List<CauseVariant> wrongWater() {
        List<List<Integer>> powders =
                cups().values().stream().filter(cup -> mayBePowder(cup.get(0))).toList();
        return changed(
                powders,
                -1,
                1,
                (reading, log2Ratio) -> BufferChange.byWater(substance(reading), Math.pow(2, log2Ratio) - 1));
    }

    private boolean mayBePowder(int reading) {
        BufferCup cup = readings.get(reading).cup();
        Preparation preparation = cup.preparation();
        boolean bottled = preparation.age().isPresent() && preparation.state() == BufferState.OPENED;
        return !bottled
                && preparation.waterRatio().isEmpty()
                && cup.substance().filter(BufferChange::knowsDilution).isPresent();
    }

    private List<CauseVariant> carbonDioxide() {
        List<List<Integer>> alkaline = cups().values().stream()
                .filter(cup -> readings.get(cup.get(0))
                        .cup()
                        .substance()
                        .filter(ALKALINE::contains)
                        .isPresent())
                .toList();
        return changed(
                alkaline,
                0,
                BufferChange.MOST_ABSORBED_MMOL_PER_KG,
                (reading, absorbed) -> BufferChange.byCarbonDioxide(substance(reading), absorbed));
    }

    private BufferSubstance substance(BufferReading reading) {
        return reading.cup().substance().orElseThrow();
    }

    private interface Change {
        double ph(BufferReading reading, double parameter);
    }

    private List<CauseVariant> changed(List<List<Integer>> cups, double low, double high, Change change) {
        return shared(
                cups,
                (touched, share) -> new CauseVariant(touched, share, low, high, parameter -> {
                    double[] potentials = idealMv.clone();
                    for (int i : touched) {
                        BufferReading reading = readings.get(i);
                        potentials[i] =
                                ideal(reading.buffer().ph() + change.ph(reading, parameter), reading.temperature());
                    }
                    return potentials;
                }));
    }

    /** Each reading but the first still lacks a share of the way from the one before. */
    private List<CauseVariant> slowJunction() {
        return List.of(new CauseVariant(List.of(), 1, 0, MOST_SHARE_MISSING, share -> {
            double[] potentials = idealMv.clone();
            for (int i = 1; i < potentials.length; i++) {
                potentials[i] = potentials[i] + share * (potentials[i - 1] - idealMv[i]);
            }
            return potentials;
        }));
    }

    private Map<BufferCup, List<Integer>> cups() {
        Map<BufferCup, List<Integer>> cups = new LinkedHashMap<>();
        for (int i = 0; i < readings.size(); i++) {
            cups.computeIfAbsent(readings.get(i).cup(), key -> new ArrayList<>())
                    .add(i);
        }
        return cups;
    }

    private List<Integer> where(java.util.function.IntPredicate condition) {
        return IntStream.range(0, readings.size()).filter(condition).boxed().toList();
    }

    private double[] unreachable() {
        double[] potentials = new double[readings.size()];
        java.util.Arrays.fill(potentials, Double.NaN);
        return potentials;
    }
}
