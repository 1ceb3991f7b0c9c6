package tunside.safety;

/** What is done besides handling chemicals. */
public enum Handling {
    /** A glass electrode is used. */
    ELECTRODE,
    /** Buffers are made up or poured. */
    BUFFERS,
    /** A hot sample is taken from the mash or the kettle. */
    SAMPLE
}
