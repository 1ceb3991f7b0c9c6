/**
 * {@code /v1/mash-predictions}, {@code /v1/malts} and {@code /v1/ph-ranges}. Grist and additions are shared: {@link
 * tunside.http.mash.GristMapper} and {@link tunside.http.mash.AdditionMapper} read them for every capability.
 */
package tunside.http.mash;
