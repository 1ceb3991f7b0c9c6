/**
 * How much acid or base brings a liquid to a pH, and how to add it in stages without overshooting.
 *
 * <p>Read {@link tunside.dosing.DoseAdvice} first: a {@link tunside.dosing.DoseQuestion} goes in, a {@link
 * tunside.dosing.DoseOutcome} with its findings comes out. Every liquid is a {@link tunside.dosing.TitrationCurve}, made by
 * {@link tunside.dosing.MashDose}, {@link tunside.dosing.LiquorDose} or {@link tunside.dosing.WortDose}; its buffering is
 * known only within a factor, which {@link tunside.dosing.BufferLearning} narrows with every addition and reading. What is
 * known then is a {@link tunside.dosing.Knowledge}, which answers every question about the next addition.
 *
 * <p>All pH are of samples cooled to 20 to 26 degC, except those of liquor, which are at its own temperature.
 */
package tunside.dosing;
