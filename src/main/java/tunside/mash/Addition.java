package tunside.mash;

/** What goes into the mash besides malt and liquor. */
public sealed interface Addition permits AcidAddition, SaltAddition {
    /** How much goes in, mmol. */
    double millimolesAdded();
}
