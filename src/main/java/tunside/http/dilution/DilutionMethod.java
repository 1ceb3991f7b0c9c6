package tunside.http.dilution;

/** How the acid goes into the water. */
public enum DilutionMethod {
    ONE_GO,
    STAGES
}
