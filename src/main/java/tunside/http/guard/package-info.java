/** Who may ask, from where, and what a browser may do with an answer. */
package tunside.http.guard;
