package tunside.water;

import tunside.quantity.Volume;

/**
 * One water of a blend.
 *
 * @param volume of it
 * @param water what it is
 */
public record WaterPart(Volume volume, Water water) {}
