package tunside.electrode.reading;

import static java.util.Objects.requireNonNull;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import tunside.quantity.Temperature;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * How a sample's own pH falls as it gets warmer, from {@code sample-temperature-effect.csv}: linear, and known only to a
 * factor of two.
 *
 * @param fallPhPerK fall of the pH per K
 * @param standardUncertainty of that fall
 * @param source of the value
 */
public record TemperatureEffect(double fallPhPerK, double standardUncertainty, String source) {
    private static final Map<SampleLiquid, TemperatureEffect> ALL = load();

    /** That of a liquid. */
    public static TemperatureEffect of(SampleLiquid liquid) {
        return requireNonNull(ALL.get(liquid));
    }

    /** The temperature that a reading is brought to: 20 degC. */
    public static Temperature reference() {
        return new Temperature(ReadingLimits.of("reference-temperature"));
    }

    /**
     * The pH of the same sample at another temperature.
     *
     * @return pH, higher where that is cooler
     */
    public double brought(double ph, Temperature from, Temperature to) {
        return ph + fallPhPerK * (from.celsius() - to.celsius());
    }

    /** Standard uncertainty that bringing a pH to another temperature adds. */
    public double uncertainty(Temperature from, Temperature to) {
        return standardUncertainty * Math.abs(from.celsius() - to.celsius());
    }

    private static Map<SampleLiquid, TemperatureEffect> load() {
        Map<SampleLiquid, TemperatureEffect> effects = new EnumMap<>(SampleLiquid.class);
        for (Row row : Table.read("sample-temperature-effect.csv").rows()) {
            SampleLiquid liquid = SampleLiquid.valueOf(row.text("liquid").toUpperCase(Locale.ROOT));
            effects.put(
                    liquid,
                    new TemperatureEffect(
                            row.number("fall_ph_per_K", 0, 0.05),
                            row.number("standard_uncertainty", 0, 0.05),
                            row.source()));
        }
        if (effects.size() != SampleLiquid.values().length) {
            throw new IllegalStateException("sample-temperature-effect.csv must name every liquid");
        }
        return effects;
    }
}
