package tunside.water;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tunside.chemistry.Ion;
import tunside.quantity.Alkalinity;
import tunside.quantity.Temperature;

/**
 * A water as its laboratory reports it. What is not reported is absent, not zero.
 *
 * @param mmolPerL ions reported, mmol/L, not negative
 * @param alkalinity titrated, or bicarbonate taken for it
 * @param endPointPh where the titration ended, 3.5 to 5.5; absent: assumed
 * @param ph of the sample, 4 to 11; absent: assumed
 * @param temperature of the sample when its pH was read, 0 to 60 degC
 */
public record WaterReport(
        Map<Ion, Double> mmolPerL,
        Optional<Alkalinity> alkalinity,
        OptionalDouble endPointPh,
        OptionalDouble ph,
        Temperature temperature) {
    public WaterReport {
        Map<Ion, Double> ordered = new EnumMap<>(Ion.class);
        ordered.putAll(mmolPerL);
        mmolPerL = Collections.unmodifiableMap(ordered);
        mmolPerL.forEach((ion, amount) -> require(ion.symbol() + " (mmol/L)", amount, 0, 5000));
        endPointPh.ifPresent(value -> require("end point pH", value, 3.5, 5.5));
        ph.ifPresent(value -> require("pH of the water", value, 4, 11));
        require("temperature of the water (degC)", temperature.celsius(), 0, 60);
    }

    private static void require(String what, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException("%s must be from %s to %s but is %s".formatted(what, low, high, value));
        }
    }
}
