package tunside.dosing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A liquid that buffers evenly, 190 mEq per pH, and a strong acid and base of 1 mEq per gram: arithmetic by hand. */
final class Lines {
    static final double MEQ_PER_PH = 190;
    static final TitrationCurve CURVE = new TitrationCurve(ph -> -MEQ_PER_PH * ph, ph -> 0);
    static final Reagent ACID = new Reagent("strong", "strong acid", true, ph -> 1, 0, OptionalDouble.of(2));
    static final Reagent BASE = new Reagent("soda", "soda", false, ph -> -1, 0, OptionalDouble.empty());
    static final DoseAim AIM = new DoseAim(5.4, 5.3, 5.5, 0.05);
    static final BufferingPrior PRIOR = new BufferingPrior(38, "mEq/(kg pH)", 0.28, "DERIVED");

    private Lines() {}

    static PastAddition added(double grams) {
        return new PastAddition(ACID, grams, Optional.empty());
    }

    static PastAddition read(double ph, double uncertainty) {
        return PastAddition.read(new PhReading(ph, uncertainty));
    }

    static DoseQuestion question(double ph, double uncertainty, PastAddition... history) {
        return question(new PhReading(ph, uncertainty), 0, 1e6, history);
    }

    static DoseQuestion question(PhReading start, double shared, double most, PastAddition... history) {
        return new DoseQuestion(
                CURVE,
                PRIOR,
                start,
                shared,
                List.of(history),
                AIM,
                Optional.of(new Supply(ACID, 0.5, most)),
                new Supply(BASE, 0.5, most));
    }
}
