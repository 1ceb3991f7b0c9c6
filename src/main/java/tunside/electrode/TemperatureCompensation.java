package tunside.electrode;

/** Where a meter gets the temperature from that it computes with. */
public enum TemperatureCompensation {
    /** It measures the temperature of the solution. */
    AUTOMATIC,
    /** The temperature is set by hand. */
    MANUAL,
    /** It computes with 25 degC always. */
    NONE
}
