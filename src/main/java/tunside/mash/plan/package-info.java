/**
 * Which additions take a mash to a pH: the smallest weighable plan within the limits of what is at hand.
 *
 * <p>Read {@link tunside.mash.plan.PlanQuestion} first: a mash, an aim, supplies, and ranges of ions that are wanted. At a
 * fixed pH the proton balance is linear in every addition and in the blend, so {@link tunside.mash.plan.RelaxedPlan} is a
 * linear programme; {@link tunside.mash.plan.PlanSearch} branches over which additions are used, and {@link
 * tunside.mash.plan.StepSearch} settles whole steps of scales and syringe on the non-linear balance. {@link
 * tunside.mash.plan.PlanScore} is the objective. What a limit costs is found by relaxing it: {@link
 * tunside.mash.plan.PlanLimits}.
 */
package tunside.mash.plan;
