/**
 * Tunside: bring liquor, mash, wort and beer to a chosen pH.
 *
 * <p>Reading order, and the only allowed direction of dependencies (each may use those to its left):
 * {@code quantity, reference, finding <- chemistry <- electrode, water <- mash <- safety, dosing <- review <- http}.
 *
 * <p>Everything but {@code http} is plain Java: records and pure functions on {@code java.*}, Hipparchus, one CSV
 * reader ({@code reference}) and one units library ({@code quantity}). {@code http} maps requests to the science and
 * answers to JSON; it never computes. {@code ArchitectureTest} enforces all of this.
 */
package tunside;
