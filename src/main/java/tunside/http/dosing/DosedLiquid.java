package tunside.http.dosing;

/** What is brought to a pH. */
public enum DosedLiquid {
    MASH,
    LIQUOR
}
