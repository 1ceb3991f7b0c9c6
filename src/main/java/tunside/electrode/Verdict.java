package tunside.electrode;

/** Whether an electrode may be trusted. Later is worse. */
public enum Verdict {
    FIT,
    FIT_WITH_CARE,
    UNFIT;

    /** The worse of two. */
    public Verdict or(Verdict other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
