/**
 * Answers on paper, {@code Accept: text/html}: one page with boxes to tick and fields to fill in, for a brewery where
 * screens get wet. Needs the question beside the answer, for grist and liquor.
 */
package tunside.http.sheet;
