package tunside.http.plan;

/** What a plan question ends in, as the contract names it. */
public enum PlanResult {
    PLAN,
    NONE_NEEDED,
    NEAREST_REACHABLE
}
