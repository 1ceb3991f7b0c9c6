package tunside.dosing;

/**
 * What the readings say of a liquid's starting pH if its buffering were known: a normal distribution of the error of the first
 * reading and of the error that all readings share, built reading by reading.
 *
 * @param logScale logarithm of the factor on the buffering
 * @param scale the factor
 * @param start the first reading
 * @param ofStart precision of the first reading's error
 * @param ofBoth its product with the shared error's
 * @param ofShared precision of the shared error
 * @param weightedStart sum of what the readings are off, by precision and by what the start does to them
 * @param weighted the same by precision alone
 * @param squares sum of its squares by precision
 */
record Hypothesis(
        double logScale,
        double scale,
        PhReading start,
        double ofStart,
        double ofBoth,
        double ofShared,
        double weightedStart,
        double weighted,
        double squares) {
    private static final double NO_SHARED_ERROR_PRECISION = 1e12;

    /** After the first reading alone. */
    static Hypothesis of(double logScale, PhReading start, double sharedUncertainty) {
        double ofShared = sharedUncertainty > 0
                ? Math.min(NO_SHARED_ERROR_PRECISION, 1 / (sharedUncertainty * sharedUncertainty))
                : NO_SHARED_ERROR_PRECISION;
        double weight = 1 / (start.standardUncertainty() * start.standardUncertainty());
        return new Hypothesis(logScale, Math.exp(logScale), start, weight, weight, ofShared + weight, 0, 0, 0);
    }

    /** After a reading {@code difference = perStart x start + shared + own error}. */
    Hypothesis with(double difference, double perStart, double uncertainty) {
        double weight = 1 / (uncertainty * uncertainty);
        return new Hypothesis(
                logScale,
                scale,
                start,
                ofStart + weight * perStart * perStart,
                ofBoth + weight * perStart,
                ofShared + weight,
                weightedStart + weight * perStart * difference,
                weighted + weight * difference,
                squares + weight * difference * difference);
    }

    private double determinant() {
        return ofStart * ofShared - ofBoth * ofBoth;
    }

    private double startError() {
        return (ofShared * weightedStart - ofBoth * weighted) / determinant();
    }

    /** Mean of the true starting pH. */
    double startPh() {
        return start.ph() + startError();
    }

    /** Its standard deviation. */
    double startUncertaintyPh() {
        return Math.sqrt(ofShared / determinant());
    }

    /** Logarithm of the probability of the readings, less what is the same for every buffering. */
    double logEvidence() {
        double shared = (ofStart * weighted - ofBoth * weightedStart) / determinant();
        return -(squares - weightedStart * startError() - weighted * shared) / 2 - Math.log(determinant()) / 2;
    }
}
