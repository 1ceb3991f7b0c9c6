/**
 * Quantities and their units. A record holds one value in one base unit; an enum a kind lists the units that a caller
 * may use. Factors come from the units library where it has the published definition, and from {@link
 * tunside.quantity.EquivalentUnit} and {@link tunside.quantity.ColourUnit} for the trade's own units.
 */
package tunside.quantity;
