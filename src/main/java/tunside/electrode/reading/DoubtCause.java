package tunside.electrode.reading;

/** What makes a reading uncertain. */
public enum DoubtCause {
    /** Scatter of the series, and what may still be missing. */
    SETTLING,
    /** Slope and offset of the calibration. */
    CALIBRATION,
    /** The meter's repeatability. */
    POTENTIAL,
    /** What the display rounds away. */
    DISPLAY,
    /** The temperature of the sample. */
    TEMPERATURE,
    /** The junction between sample and reference. */
    LIQUID_JUNCTION,
    /** Where the lines of different temperatures cross. */
    ISOTHERMAL_POINT,
    /** Drift since the calibration. */
    DRIFT,
    /** Nobody calibrated the electrode, or it is unfit. */
    UNCALIBRATED,
    /** Bringing the pH to 20 degC. */
    TEMPERATURE_EFFECT
}
