/**
 * Reads the reference tables: CSV files under {@code /reference} whose header lines say what they hold, in which unit,
 * how sure it is and where it is valid, and whose rows each name their source. Knows no table in particular. A broken
 * row stops the start with its file and line.
 */
package tunside.reference;
