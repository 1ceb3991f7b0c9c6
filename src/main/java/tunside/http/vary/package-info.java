/** One member of a request varied over a range, for the curve of an answer: what a slider in a front end asks for. */
package tunside.http.vary;
