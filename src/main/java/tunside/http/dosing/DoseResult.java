package tunside.http.dosing;

/** What a dose question ends in, as the contract names it. */
public enum DoseResult {
    DOSE,
    NONE_NEEDED,
    OUT_OF_REACH,
    RAISE_INSTEAD
}
