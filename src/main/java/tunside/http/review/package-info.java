/** {@code /v1/brew-reviews}. The experience that it answers with is {@link tunside.http.mash.ExperienceDocument}. */
package tunside.http.review;
