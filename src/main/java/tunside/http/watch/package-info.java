/** What an operator sees: the id of a request, counts of answers, health. Never anything of a body. */
package tunside.http.watch;
