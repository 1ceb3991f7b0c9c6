package tunside.dosing;

/** How much of a reagent brings a liquid to a pH. */
@FunctionalInterface
interface GramsNeeded {
    /** This or less is needed with a probability, 0 to 1 exclusive: g, 0 where nothing is, infinite where no amount does it. */
    double grams(double probability);
}
