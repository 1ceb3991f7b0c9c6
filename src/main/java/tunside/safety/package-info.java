/**
 * How not to get hurt: {@link tunside.safety.SafetyNotes} by what is handled, {@link tunside.safety.Hazards} and supply
 * limits by substance and strength, what the codes mean, food status, and what neutralises a spill.
 */
package tunside.safety;
