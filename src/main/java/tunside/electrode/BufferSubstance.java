package tunside.electrode;

/** What a buffer is made of: decides how it answers to too much water and to carbon dioxide. */
public enum BufferSubstance {
    TETROXALATE,
    TARTRATE,
    CITRATE,
    PHTHALATE,
    /** Equal amounts of both phosphates: 6.86. */
    PHOSPHATE,
    /** Phosphates 1 to 3.5: 7.41. */
    PHOSPHATE_1_TO_3_5,
    /** Phosphates 0.026 to 0.041: 7.00. */
    TECHNICAL_PHOSPHATE,
    BORAX,
    CARBONATE
}
