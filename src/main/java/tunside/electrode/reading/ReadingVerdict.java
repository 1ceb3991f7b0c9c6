package tunside.electrode.reading;

/** On which side of a range the pH is. */
public enum ReadingVerdict {
    IN_RANGE,
    ABOVE,
    BELOW,
    CANNOT_TELL
}
