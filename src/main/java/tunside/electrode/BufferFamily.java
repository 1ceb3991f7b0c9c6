package tunside.electrode;

/** A set of buffers whose values belong together. Mixing families matters more than the third decimal. */
public enum BufferFamily {
    /** Primary standards, IUPAC 2002, three decimals: 4.005, 6.865, 9.180, 10.012 at 25 degC. */
    IUPAC,
    /** The phthalate equation of the NBS work of 1977, 0 to 60 degC: 4.006 at 25 degC. */
    NBS_1977,
    /** JIS Z 8802, two decimals, up to 95 degC: 4.01, 6.86, 9.18 at 25 degC; what home powder sets are. */
    JIS,
    /** The technical set 4.00, 7.00, 10.01. */
    TECHNICAL
}
