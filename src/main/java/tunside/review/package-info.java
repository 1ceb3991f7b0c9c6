/**
 * What a brewer's own record teaches the model: the bias of the household, its buffering, and how its lots of each malt
 * class differ from the class.
 *
 * <p>Read {@link tunside.review.BrewReview} first. A {@link tunside.review.MeasuredBrew} is a mash with its readings; a
 * {@code BrewEquation} is the same as a function of the shared parameters and of the brew's own inputs; {@code
 * HouseholdFit} finds the most probable values of both (RODGERS-2000) and leaves a linear problem, a {@code NormalBelief},
 * which answers everything else: what each brew teaches, what the others say about it, and what more brews would bring.
 */
package tunside.review;
