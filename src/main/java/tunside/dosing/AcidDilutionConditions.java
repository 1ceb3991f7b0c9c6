package tunside.dosing;

import tunside.quantity.Temperature;

/**
 * Under what conditions a dilution is made.
 *
 * @param water its temperature, 0 to 100 degC
 * @param acid temperature of the strong acid, 0 to 35 degC
 * @param warmLimitCelsius temperature that the mixture may surely not pass, 40 to 60 degC
 * @param labelShare relative standard uncertainty of the strength in hand, 0 to 0.2
 */
public record AcidDilutionConditions(Temperature water, Temperature acid, double warmLimitCelsius, double labelShare) {
    public AcidDilutionConditions {
        require("temperature of the water (degC)", water.celsius(), 0, 100);
        require("temperature of the acid (degC)", acid.celsius(), 0, 35);
        require("temperature that the mixture may reach (degC)", warmLimitCelsius, 40, 60);
        require("uncertainty of the label (share)", labelShare, 0, 0.2);
    }

    private static void require(String what, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException("%s must be from %s to %s but is %s".formatted(what, low, high, value));
        }
    }
}
