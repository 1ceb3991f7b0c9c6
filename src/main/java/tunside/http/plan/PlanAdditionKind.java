package tunside.http.plan;

/** What sort of addition a plan holds, as the contract names it. */
public enum PlanAdditionKind {
    DILUTING_WATER,
    ACIDULATED_MALT,
    SALT,
    ACID,
    BASE
}
