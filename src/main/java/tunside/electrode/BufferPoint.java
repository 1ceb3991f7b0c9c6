package tunside.electrode;

/**
 * One row of a buffer's table.
 *
 * @param temperatureDegC degC
 * @param ph pH there
 */
public record BufferPoint(double temperatureDegC, double ph) {}
