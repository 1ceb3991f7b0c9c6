package tunside.mash;

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
public record UncertainInput(String id, String subject, String unit, double value, double standardUncertainty) {}
