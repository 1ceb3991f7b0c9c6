package tunside.reference;

/**
 * A publication, or a named kind of knowledge, that values come from.
 *
 * @param id as rows and answers name it, such as {@code BUCK-2002}
 * @param citation authors, title or journal, year, part
 * @param kind {@code publication}, {@code second-hand}, {@code common-practice}, {@code derived} or {@code memory}
 * @param read how the values reached the tables, in words
 */
public record Source(String id, String citation, String kind, String read) {}
