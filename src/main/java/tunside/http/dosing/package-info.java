/** {@code POST /v1/acid-doses}: how much acid, and how to add it. */
package tunside.http.dosing;
