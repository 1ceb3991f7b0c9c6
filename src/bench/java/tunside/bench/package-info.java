/**
 * What an answer costs, and how the cost grows: {@code mvn -q -Pbench test-compile exec:exec}. Prints a table with every
 * time as a ratio to a bare JSON echo in the same run, since times alone say more of the machine than of the code.
 */
package tunside.bench;
