/** {@code POST /v1/acid-dilutions}: make a weaker acid of a stronger one without getting hurt. */
package tunside.http.dilution;
