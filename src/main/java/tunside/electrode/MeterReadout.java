package tunside.electrode;

/** What the readings of a calibration are. */
public enum MeterReadout {
    /** Millivolts. */
    POTENTIAL,
    /** pH as the meter showed it before it was adjusted. */
    AS_FOUND,
    /** pH as the meter shows it after it was adjusted in buffers. */
    AFTER_ADJUSTING;

    /** What later readings with this calibration must be. */
    public CalibrationSignal signal() {
        return this == POTENTIAL ? CalibrationSignal.POTENTIAL : CalibrationSignal.DISPLAYED_PH;
    }
}
