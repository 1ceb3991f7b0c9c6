package tunside.dosing;

/** What is known of a quantity. */
@FunctionalInterface
interface Distribution {
    /**
     * A value of the quantity.
     *
     * @param below probability of a smaller one
     * @param density what the probability changes by per unit there
     */
    record Point(double below, double density) {}

    Point at(double value);
}
