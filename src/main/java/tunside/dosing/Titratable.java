package tunside.dosing;

/** A liquid that is brought to a pH: how it answers acid, up to one unknown factor on its buffering. */
public interface Titratable {
    /**
     * The pH after more acid.
     *
     * @param scale factor on the part of the buffering that is not known, above 0
     * @param ph before, 0 to 14
     * @param millimolesBefore of acid that is in it already since the first reading, not negative
     * @param millimoles of acid added, not negative
     * @return 0 to 14, not above {@code ph}; 0 where the acid is more than the model reaches
     */
    double after(double scale, double ph, double millimolesBefore, double millimoles);

    /** Standard deviation of the natural logarithm of the factor, before anything is learnt. */
    double logSd();
}
