package tunside.dosing;

/** What happened so far, in order. */
public sealed interface DoseEvent {
    /** Acid was added. @param millimoles of acid that acts, not negative */
    record Added(double millimoles) implements DoseEvent {
        public Added {
            if (!(millimoles >= 0 && millimoles < 1e9)) {
                throw new IllegalArgumentException("acid added (%s mmol) must not be negative".formatted(millimoles));
            }
        }
    }

    /** A cooled sample was read. @param ph 0 to 14 @param standardUncertainty of the reading, 0.001 to 1 */
    record Reading(double ph, double standardUncertainty) implements DoseEvent {
        public Reading {
            if (!(ph >= 0 && ph <= 14)) {
                throw new IllegalArgumentException("pH (%s) must be from 0 to 14".formatted(ph));
            }
            if (!(standardUncertainty >= 0.001 && standardUncertainty <= 1)) {
                throw new IllegalArgumentException("standard uncertainty of a reading (%s) must be from 0.001 to 1"
                        .formatted(standardUncertainty));
            }
        }
    }
}
