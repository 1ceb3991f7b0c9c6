package tunside.electrode;

/** What the meter gave. */
public enum CalibrationSignal {
    /** Millivolts of the electrode. */
    POTENTIAL,
    /** pH only: the potential behind it is relative to what the meter has stored. */
    DISPLAYED_PH
}
