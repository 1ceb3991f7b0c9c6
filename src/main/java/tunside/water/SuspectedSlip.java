package tunside.water;

/**
 * A slip that may stand behind a report.
 *
 * @param slip which
 * @param probability that it is this one, of all slips, of none and of anything else, 0 to 1
 * @param mended the report as it was meant in that case
 * @param balanceBefore ions of the report as it stands
 * @param balanceAfter ions of the report as it was meant
 */
public record SuspectedSlip(
        Slip slip, double probability, WaterReport mended, IonBalance balanceBefore, IonBalance balanceAfter) {}
