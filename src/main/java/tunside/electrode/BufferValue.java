package tunside.electrode;

/**
 * What a cup of buffer is taken to be.
 *
 * @param ph at its temperature, changes by water and age included
 * @param standardUncertainty in pH
 * @param changeByWater pH, included
 * @param changeByAge pH, included
 */
public record BufferValue(double ph, double standardUncertainty, double changeByWater, double changeByAge) {}
