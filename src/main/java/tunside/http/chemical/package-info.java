/** Reads the acids, salts and bases that a request measures out, for every capability that has them. */
package tunside.http.chemical;
