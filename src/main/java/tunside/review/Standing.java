package tunside.review;

/** Whether the experience rests on a brew, and if not why. */
public enum Standing {
    /** The experience rests on it. */
    COUNTED,
    /** Set aside: it lies more than 3 standard deviations from what the others let expect. */
    FAR_FROM_OTHERS,
    /** Set aside: as it is written down it lands where no malt was ever titrated. */
    BEYOND_MODEL,
    /** Set aside: to explain it, the household would have to be what none can be. */
    UNEXPLAINABLE
}
