package tunside.quantity;

/** A unit in which a caller may state a quantity. */
public interface Unit extends Symbol {
    /**
     * Converts to the base unit of the kind.
     *
     * @param value in this unit
     * @return the same quantity in the base unit named by the implementing enum
     */
    double toBase(double value);
}
