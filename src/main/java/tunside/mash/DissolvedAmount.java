package tunside.mash;

/**
 * How much of a substance is dissolved.
 *
 * @param symbol such as {@code Ca} or {@code lactate}
 * @param mgPerL of liquor
 */
public record DissolvedAmount(String symbol, double mgPerL) {}
