/**
 * Answers as pictures, {@code Accept: image/svg+xml}: one class a chart, which builds a {@link
 * tunside.http.picture.Picture} from the answer that JSON would carry, so both show the same numbers. Charts are drawn by
 * JFreeChart onto {@link tunside.http.picture.SvgSurface}; no fonts, display or native toolkit of the machine are used,
 * and the same answer gives the same bytes everywhere.
 */
package tunside.http.picture;
