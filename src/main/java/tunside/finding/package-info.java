/** What the science found out about its input: values with a code, never sentences. The words stand in {@code checks-*.csv}. */
package tunside.finding;
