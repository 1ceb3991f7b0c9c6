/** {@code /v1/mash-plans}: which additions take a mash to a pH. */
package tunside.http.plan;
