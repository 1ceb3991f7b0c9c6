/** {@code POST /v1/ph-readings}. */
package tunside.http.reading;
