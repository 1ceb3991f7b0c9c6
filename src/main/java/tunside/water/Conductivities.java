package tunside.water;

import static java.util.Objects.requireNonNull;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import tunside.chemistry.Activity;
import tunside.chemistry.Ion;
import tunside.reference.Row;
import tunside.reference.Table;

/** The conductivity that a water's ions make up (SM-2510), from {@code ion-conductivities.csv}. */
public final class Conductivities {
    private static final Table TABLE = Table.read("ion-conductivities.csv");
    private static final double BICARBONATE = limiting("HCO3");
    private static final Map<Ion, Double> LIMITING = load();

    private Conductivities() {}

    /**
     * {@code sum(lambda c z) y^2} with Davies' monovalent activity coefficient y of 25 degC.
     *
     * @param mmolPerL ions
     * @param alkalinityMeqPerL taken as bicarbonate
     * @return uS/cm at 25 degC; 89 to 99 % of what PHREEQC-3 computes for five model waters
     */
    public static double microsiemensPerCm(Map<Ion, Double> mmolPerL, double alkalinityMeqPerL) {
        double bicarbonate = Math.max(0, alkalinityMeqPerL);
        double sum = BICARBONATE * bicarbonate;
        double squares = bicarbonate;
        for (Map.Entry<Ion, Double> entry : mmolPerL.entrySet()) {
            int charge = entry.getKey().charge();
            sum += requireNonNull(LIMITING.get(entry.getKey())) * entry.getValue();
            squares += charge * charge * entry.getValue();
        }
        double ionicStrength = Math.min(0.5, squares / 2000);
        double y = Math.pow(10, -0.5 * Activity.daviesFunction(ionicStrength));
        return sum * y * y;
    }

    private static Map<Ion, Double> load() {
        Map<Ion, Double> values = new EnumMap<>(Ion.class);
        for (Ion ion : Ion.ALL) {
            values.put(ion, limiting(ion.symbol()));
        }
        return Collections.unmodifiableMap(values);
    }

    private static double limiting(String ion) {
        for (Row row : TABLE.rows()) {
            if (row.text("ion").equals(ion)) {
                return row.number("conductivity_s_cm2_per_mol", 10, 500);
            }
        }
        throw TABLE.rows().get(0).fault("there is no row for '%s'".formatted(ion));
    }
}
