package tunside.electrode.reading;

/** What the electrode stands in. */
public enum SampleLiquid {
    MASH,
    WORT,
    BEER,
    LIQUOR
}
