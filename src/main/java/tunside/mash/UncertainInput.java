package tunside.mash;

import java.util.Set;

/**
 * One number that the prediction rests on. Inputs are independent of each other; what several malts share is an input of
 * its own.
 *
 * @param id what it is, such as {@code malt-ph}
 * @param subject whose it is, such as {@code pale}; empty for a parameter of the model
 * @param unit of value and uncertainty; 1 for a factor
 * @param value taken
 * @param standardUncertainty of the value
 */
public record UncertainInput(String id, String subject, String unit, double value, double standardUncertainty) {
    private static final Set<String> UNITS_OF_AMOUNTS = Set.of("1", "g", "kg", "L", "mmol", "mEq/(kg pH)");

    /** Whether it is an amount or a factor that is there: nothing takes it to zero or below. */
    public boolean isAmount() {
        return value > 0 && UNITS_OF_AMOUNTS.contains(unit);
    }
}
