package tunside.electrode;

/** Where the calibration lines of different temperatures are taken to cross. Both are assumptions about the electrode. */
public enum IsothermalPoint {
    /** At pH 7: the calibrated offset stays the same number of mV at every temperature. What instruments assume. */
    OFFSET_KEPT,
    /** At 0 mV: the calibrated zero point stays the same pH at every temperature. */
    ZERO_POINT_KEPT;

    /** The other of the two. */
    public IsothermalPoint other() {
        return this == OFFSET_KEPT ? ZERO_POINT_KEPT : OFFSET_KEPT;
    }
}
