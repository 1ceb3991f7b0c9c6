/**
 * The mash: where its pH lands, how sure that is, and why.
 *
 * <p>Read {@link tunside.mash.Mash} first: a grist, a liquor, additions and a {@link tunside.mash.MashModel}. It becomes a
 * {@link tunside.mash.MashEquation}: a list of uncertain inputs and a list of components, each of which takes up or gives
 * protons. {@link tunside.mash.MashPrediction} solves it and carries every input's uncertainty through the solution.
 *
 * <p>The parameters are one consistent set, fitted with pK of 25 degC and without activities; they must not be mixed with
 * others. All pH are of samples cooled to 20 to 26 degC.
 */
package tunside.mash;
