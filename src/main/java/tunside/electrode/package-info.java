/**
 * The glass electrode: buffers, the Nernst slope, the calibration line and what it says about the electrode, and the
 * reading of a sample with it.
 *
 * <p>Reading order: {@link tunside.electrode.NernstSlope}, {@link tunside.electrode.Buffers}, {@link
 * tunside.electrode.StraightLine}, {@link tunside.electrode.Calibration}, then {@code CalibrationEvaluation}.
 */
package tunside.electrode;
