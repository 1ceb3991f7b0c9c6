package tunside.electrode.reading;

/**
 * When a reading counts as settled: it changed by no more than {@code changePh} in the last {@code windowS}, and will
 * change by no more than that from the last reading on.
 *
 * @param changePh 0.001 to 0.5
 * @param windowS s, 5 to 600
 */
public record SettlingCriterion(double changePh, double windowS) {
    public SettlingCriterion {
        if (!(changePh >= 0.001 && changePh <= 0.5)) {
            throw new IllegalArgumentException("change must be from 0.001 to 0.5 but is %s".formatted(changePh));
        }
        if (!(windowS >= 5 && windowS <= 600)) {
            throw new IllegalArgumentException("window must be from 5 to 600 s but is %s s".formatted(windowS));
        }
    }

    /** The usual one of {@code reading-model.csv}: 0.01 in 30 s. */
    public static SettlingCriterion usual() {
        return new SettlingCriterion(ReadingLimits.of("settled-change"), ReadingLimits.of("settled-window"));
    }
}
