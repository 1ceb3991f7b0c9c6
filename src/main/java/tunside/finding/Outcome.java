package tunside.finding;

/** How a check came out. */
public enum Outcome {
    PASS,
    NOTE,
    CAUTION,
    STOP
}
