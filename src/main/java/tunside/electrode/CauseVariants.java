package tunside.electrode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import tunside.quantity.Temperature;

/** Every way in which each cause can have come about in a session. */
final class CauseVariants {
    private static final double DIFFERENT_BUFFERS_PH = 0.3;
    private static final Set<BufferSubstance> ALKALINE = EnumSet.of(BufferSubstance.BORAX, BufferSubstance.CARBONATE);

    private final CauseGrids grids;
    private final List<BufferReading> readings;
    private final List<List<Integer>> cups;
    private final double[] ph;
    private final double[] idealMv;

    CauseVariants(CalibrationSession session, CauseGrids grids) {
        this.grids = grids;
        this.readings = session.readings();
        this.cups = cups(readings);
        this.ph = new double[readings.size()];
        this.idealMv = new double[readings.size()];
        for (int i = 0; i < idealMv.length; i++) {
            ph[i] = readings.get(i).buffer().ph();
            idealMv[i] = ideal(ph[i], readings.get(i).temperature());
        }
    }

    /** What an ideal electrode would give in each reading, mV. */
    double[] idealMv() {
        return idealMv.clone();
    }

    /** The variants of a cause; empty where it cannot have happened. */
    List<CauseVariant> of(Cause cause) {
        return switch (cause) {
            case SOUND, CRACKED_BULB, COATED_BULB, WEAK_GLASS, UNEXPLAINED ->
                List.of(new CauseVariant(List.of(), 1, ParameterGrid.NONE, new double[idealMv.length][]));
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
        double[][] potentials = new double[idealMv.length][];
        for (int i : touched) {
            Temperature temperature = readings.get(i).temperature();
            potentials[i] = new double[] {ideal(table.ph(temperature), temperature)};
        }
        return List.of(new CauseVariant(touched, 1, ParameterGrid.NONE, potentials));
    }

    private boolean substanceIs(int reading, BufferSubstance substance) {
        return readings.get(reading).cup().substance().filter(substance::equals).isPresent();
    }

    private List<CauseVariant> swapped() {
        List<List<Integer>> pairs = new ArrayList<>();
        List<double[][]> pictures = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            for (int j = i + 1; j < readings.size(); j++) {
                OptionalDouble here = phOf(j, readings.get(i).temperature());
                OptionalDouble there = phOf(i, readings.get(j).temperature());
                if (here.isPresent()
                        && there.isPresent()
                        && Math.abs(here.getAsDouble() - there.getAsDouble()) > DIFFERENT_BUFFERS_PH) {
                    double[][] potentials = new double[idealMv.length][];
                    potentials[i] = new double[] {
                        ideal(here.getAsDouble(), readings.get(i).temperature())
                    };
                    potentials[j] = new double[] {
                        ideal(there.getAsDouble(), readings.get(j).temperature())
                    };
                    pairs.add(List.of(i, j));
                    pictures.add(potentials);
                }
            }
        }
        List<CauseVariant> variants = new ArrayList<>();
        for (int i = 0; i < pairs.size(); i++) {
            variants.add(new CauseVariant(pairs.get(i), 1.0 / pairs.size(), ParameterGrid.NONE, pictures.get(i)));
        }
        return variants;
    }

    private OptionalDouble phOf(int reading, Temperature at) {
        BufferReading of = readings.get(reading);
        return of.temperature().equals(at)
                ? OptionalDouble.of(of.buffer().ph())
                : of.cup().phIf(of.temperature(), at);
    }

    /** All cups, as by a bad probe, or one of them. */
    private List<CauseVariant> wrongTemperature() {
        double[][] warmed = new double[readings.size()][];
        for (int i = 0; i < warmed.length; i++) {
            warmed[i] = atOtherTemperatures(readings.get(i), ph[i]);
        }
        return shared(cups, grids.kelvin(), warmed);
    }

    private double[] atOtherTemperatures(BufferReading reading, double ph) {
        ParameterGrid kelvin = grids.kelvin();
        Temperature stated = reading.temperature();
        Optional<Buffer> table = reading.cup().table().filter(buffer -> buffer.covers(stated));
        boolean unknown = reading.cup().substance().isEmpty();
        double there = table.map(buffer -> buffer.ph(stated)).orElse(Double.NaN);
        double[] potentials = new double[kelvin.size()];
        for (int i = 0; i < potentials.length; i++) {
            double celsius = stated.celsius() + kelvin.value(i);
            if (celsius >= -10 && celsius <= 100) {
                double change = unknown ? 0 : table.isPresent() ? table.get().phOrNaN(celsius) - there : Double.NaN;
                potentials[i] = ideal(ph + change, new Temperature(celsius));
            } else {
                potentials[i] = Double.NaN;
            }
        }
        return potentials;
    }

    /** One cup, or all that may have been powders. */
    private List<CauseVariant> wrongWater() {
        return changed(
                cups.stream().filter(cup -> mayBePowder(cup.get(0))).toList(), grids.log2Water(), grids::byWater);
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
        List<List<Integer>> alkaline = cups.stream()
                .filter(cup -> readings.get(cup.get(0))
                        .cup()
                        .substance()
                        .filter(ALKALINE::contains)
                        .isPresent())
                .toList();
        return changed(alkaline, grids.absorbed(), grids::byCarbonDioxide);
    }

    private List<CauseVariant> changed(
            List<List<Integer>> groups, ParameterGrid grid, Function<BufferSubstance, double[]> changes) {
        double[][] changed = new double[readings.size()][];
        for (List<Integer> group : groups) {
            for (int i : group) {
                BufferReading reading = readings.get(i);
                double[] own = changes.apply(reading.cup().substance().orElseThrow());
                changed[i] = new double[own.length];
                for (int j = 0; j < own.length; j++) {
                    changed[i][j] = ideal(ph[i] + own[j], reading.temperature());
                }
            }
        }
        return shared(groups, grid, changed);
    }

    /**
     * Half of the prior to all groups together, the other half to each alone.
     *
     * @param changedMv potentials of each reading that a group holds, by point of the grid
     */
    private List<CauseVariant> shared(List<List<Integer>> groups, ParameterGrid grid, double[][] changedMv) {
        List<CauseVariant> variants = new ArrayList<>();
        double together = groups.size() > 1 ? 0.5 : 0;
        for (List<Integer> group : groups) {
            variants.add(variant(group, (1 - together) / groups.size(), grid, changedMv));
        }
        if (groups.size() > 1) {
            List<Integer> all = new ArrayList<>();
            groups.forEach(all::addAll);
            Collections.sort(all);
            variants.add(variant(all, together, grid, changedMv));
        }
        return variants;
    }

    private CauseVariant variant(List<Integer> touched, double share, ParameterGrid grid, double[][] changedMv) {
        double[][] potentials = new double[idealMv.length][];
        for (int i : touched) {
            potentials[i] = changedMv[i];
        }
        return new CauseVariant(touched, share, grid, potentials);
    }

    /** Each reading but the first still lacks a share of the way from the one before. */
    private List<CauseVariant> slowJunction() {
        double[][] potentials = new double[idealMv.length][];
        ParameterGrid missing = grids.missing();
        double[] before = new double[missing.size()];
        Arrays.fill(before, idealMv[0]);
        for (int i = 1; i < potentials.length; i++) {
            double[] reached = new double[missing.size()];
            for (int j = 0; j < reached.length; j++) {
                reached[j] = idealMv[i] + missing.value(j) * (before[j] - idealMv[i]);
            }
            potentials[i] = reached;
            before = reached;
        }
        return List.of(new CauseVariant(List.of(), 1, missing, potentials));
    }

    private static List<List<Integer>> cups(List<BufferReading> readings) {
        Map<BufferCup, List<Integer>> cups = new LinkedHashMap<>();
        for (int i = 0; i < readings.size(); i++) {
            cups.computeIfAbsent(readings.get(i).cup(), key -> new ArrayList<>())
                    .add(i);
        }
        return List.copyOf(cups.values());
    }

    private List<Integer> where(java.util.function.IntPredicate condition) {
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            if (condition.test(i)) {
                places.add(i);
            }
        }
        return places;
    }
}
