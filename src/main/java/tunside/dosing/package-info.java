/**
 * How much acid, and how to add it. A {@link tunside.dosing.Titratable} says how a liquid answers acid, a {@link
 * tunside.dosing.Belief} what is known of its buffering and its pH, a {@link tunside.dosing.DosePlan} what to do next.
 */
package tunside.dosing;
