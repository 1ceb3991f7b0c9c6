package tunside.electrode;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.analysis.interpolation.LinearInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * What water, air and time make of a buffer, from {@code buffer-dilution.csv}, {@code buffer-carbon-dioxide.csv} and
 * {@code buffer-shelf-life.csv}. Substances without a row there do not change.
 */
final class BufferChange {
    static final double MOST_ABSORBED_MMOL_PER_KG = 5;

    private static final Map<BufferSubstance, PolynomialSplineFunction> DILUTION =
            curves("buffer-dilution.csv", "excess_water");
    private static final Map<BufferSubstance, PolynomialSplineFunction> CARBON_DIOXIDE =
            curves("buffer-carbon-dioxide.csv", "absorbed_mmol_per_kg");
    private static final Map<BufferSubstance, Double> IN_AIR = inAir();
    private static final Map<BufferState, Map<BufferSubstance, Double>> SHELF_LIFE_DAYS = shelfLives();

    private BufferChange() {}

    /** Whether the table knows what water makes of this substance. */
    static boolean knowsDilution(BufferSubstance substance) {
        return DILUTION.containsKey(substance);
    }

    /**
     * Change of pH by too much or too little water.
     *
     * @param excessWater as a fraction of the label's volume, -0.5 to 1
     */
    static double byWater(BufferSubstance substance, double excessWater) {
        PolynomialSplineFunction curve = DILUTION.get(substance);
        return curve == null ? 0 : curve.value(excessWater);
    }

    /**
     * Change of pH by absorbed carbon dioxide; not further than equilibrium with air goes.
     *
     * @param absorbedMmolPerKg 0 to 5
     */
    static double byCarbonDioxide(BufferSubstance substance, double absorbedMmolPerKg) {
        PolynomialSplineFunction curve = CARBON_DIOXIDE.get(substance);
        return curve == null
                ? 0
                : Math.max(
                        requireNonNull(IN_AIR.get(substance)),
                        curve.value(Math.min(absorbedMmolPerKg, MOST_ABSORBED_MMOL_PER_KG)));
    }

    /** How long it may be trusted, days. */
    static double shelfLifeDays(BufferSubstance substance, BufferState state) {
        return requireNonNull(requireNonNull(SHELF_LIFE_DAYS.get(state)).get(substance));
    }

    private static Map<BufferSubstance, PolynomialSplineFunction> curves(String file, String column) {
        Map<BufferSubstance, List<double[]>> points = new EnumMap<>(BufferSubstance.class);
        for (Row row : Table.read(file).rows()) {
            if (!row.text(column).equals("air")) {
                points.computeIfAbsent(TableEnums.of(BufferSubstance.class, row, "substance"), key -> new ArrayList<>())
                        .add(new double[] {row.number(column), row.number("ph_change", -1, 1)});
            }
        }
        Map<BufferSubstance, PolynomialSplineFunction> curves = new EnumMap<>(BufferSubstance.class);
        points.forEach((substance, own) -> curves.put(
                substance,
                new LinearInterpolator()
                        .interpolate(
                                own.stream().mapToDouble(point -> point[0]).toArray(),
                                own.stream().mapToDouble(point -> point[1]).toArray())));
        return curves;
    }

    private static Map<BufferSubstance, Double> inAir() {
        Map<BufferSubstance, Double> changes = new EnumMap<>(BufferSubstance.class);
        for (Row row : Table.read("buffer-carbon-dioxide.csv").rows()) {
            if (row.text("absorbed_mmol_per_kg").equals("air")) {
                changes.put(TableEnums.of(BufferSubstance.class, row, "substance"), row.number("ph_change", -1, 1));
            }
        }
        return changes;
    }

    private static Map<BufferState, Map<BufferSubstance, Double>> shelfLives() {
        Map<BufferState, Map<BufferSubstance, Double>> days = new EnumMap<>(BufferState.class);
        for (Row row : Table.read("buffer-shelf-life.csv").rows()) {
            days.computeIfAbsent(
                            TableEnums.of(BufferState.class, row, "state"), key -> new EnumMap<>(BufferSubstance.class))
                    .put(TableEnums.of(BufferSubstance.class, row, "substance"), row.number("days", 1, 3650));
        }
        return days;
    }
}
