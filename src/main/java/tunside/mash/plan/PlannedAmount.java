package tunside.mash.plan;

/**
 * One addition of a plan.
 *
 * @param supply what
 * @param amount in its measure, a whole number of its steps, above 0
 */
public record PlannedAmount(PlanSupply supply, double amount) {}
