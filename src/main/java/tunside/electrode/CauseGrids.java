package tunside.electrode;

import static java.util.Objects.requireNonNull;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The values at which the parameters of the causes are tried, and what each of them makes of every buffer. */
final class CauseGrids {
    /** The first is enough where the readings leave every parameter as open as a home brewer's mostly do. */
    static final List<CauseGrids> EVER_FINER = List.of(new CauseGrids(31), new CauseGrids(121), new CauseGrids(361));

    private static final double MOST_KELVIN_OFF = 30;
    private static final double MOST_SHARE_MISSING = 0.5;

    private final int points;
    private final ParameterGrid kelvin;
    private final ParameterGrid log2Water;
    private final ParameterGrid absorbed;
    private final ParameterGrid missing;
    private final Map<BufferSubstance, double[]> byWater;
    private final Map<BufferSubstance, double[]> byCarbonDioxide;

    private interface Change {
        double ph(BufferSubstance made, double parameter);
    }

    CauseGrids(int points) {
        this.points = points;
        this.kelvin = even(MOST_KELVIN_OFF, Cause.WRONG_TEMPERATURE);
        this.log2Water = even(1, Cause.WRONG_WATER_VOLUME);
        this.absorbed = fromZero(BufferChange.MOST_ABSORBED_MMOL_PER_KG, Cause.CARBON_DIOXIDE);
        this.missing = fromZero(MOST_SHARE_MISSING, Cause.SLOW_JUNCTION);
        this.byWater = changes(log2Water, (made, log2) -> BufferChange.byWater(made, Math.pow(2, log2) - 1));
        this.byCarbonDioxide = changes(absorbed, BufferChange::byCarbonDioxide);
    }

    private ParameterGrid even(double most, Cause cause) {
        return ParameterGrid.even(-most, most, cause.parameterSd(), points);
    }

    private ParameterGrid fromZero(double most, Cause cause) {
        return ParameterGrid.fromZero(most, cause.parameterSd(), points);
    }

    private static Map<BufferSubstance, double[]> changes(ParameterGrid grid, Change change) {
        Map<BufferSubstance, double[]> changes = new EnumMap<>(BufferSubstance.class);
        for (BufferSubstance made : BufferSubstance.values()) {
            double[] own = new double[grid.size()];
            for (int i = 0; i < own.length; i++) {
                own[i] = change.ph(made, grid.value(i));
            }
            changes.put(made, own);
        }
        return changes;
    }

    /** Of the largest grid. */
    int points() {
        return points;
    }

    /** Kelvin above the stated temperature. */
    ParameterGrid kelvin() {
        return kelvin;
    }

    /** Logarithm to base 2 of the water relative to the label's. */
    ParameterGrid log2Water() {
        return log2Water;
    }

    /** Carbon dioxide, mmol/kg. */
    ParameterGrid absorbed() {
        return absorbed;
    }

    /** Share of the way from one reading to the next that is still missing. */
    ParameterGrid missing() {
        return missing;
    }

    /** Change of a buffer's pH at each point of {@link #log2Water}. */
    double[] byWater(BufferSubstance made) {
        return requireNonNull(byWater.get(made));
    }

    /** Change of a buffer's pH at each point of {@link #absorbed}. */
    double[] byCarbonDioxide(BufferSubstance made) {
        return requireNonNull(byCarbonDioxide.get(made));
    }
}
