package tunside.dosing;

import java.util.List;
import java.util.Optional;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Salts;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Volume;

/** Questions that several tests ask. */
final class Doses {
    private Doses() {}

    static AcidProduct acid(String id, double percent) {
        return AcidProduct.of(Acids.get(id), Strength.percent(percent));
    }

    /** 5 kg of pale malt in 17 L with 2.5 mEq/L of alkalinity. */
    static Mash pale() {
        return mash(5, 17);
    }

    static Mash mash(double kilograms, double litres) {
        return Mash.of(
                new Grist(List.of(new GristPart(Malt.of("pale"), new Mass(kilograms)))),
                Liquor.titrated(new Volume(litres), 2.5, 4.5, 7.6, 2.5, 0.8));
    }

    /** Phosphoric acid of 10 %, measured to 0.1 mL. */
    static DoseQuestion question(
            Mash mash, double measuredPh, double uncertainty, DoseAim aim, PastAddition... history) {
        return question(mash, acid("phosphoric", 10), measuredPh, uncertainty, aim, history);
    }

    static DoseQuestion question(
            Mash mash,
            AcidProduct product,
            double measuredPh,
            double uncertainty,
            DoseAim aim,
            PastAddition... history) {
        MashDose liquid = new MashDose(mash);
        return DoseQuestion.of(
                liquid,
                new PhReading(measuredPh, uncertainty),
                0,
                List.of(history),
                aim,
                Optional.of(liquid.acid(product, 0.1 * product.densityGPerMl(), 1e6)),
                liquid.base(Salts.get(Bases.USUAL), 0.1));
    }

    /** The same question after other additions. */
    static DoseQuestion after(DoseQuestion question, List<PastAddition> history) {
        return new DoseQuestion(
                question.curve(),
                question.prior(),
                question.start(),
                question.sharedUncertainty(),
                history,
                question.aim(),
                question.acid(),
                question.base());
    }

    static PastAddition past(DoseQuestion question, double grams, double ph, double uncertainty) {
        return new PastAddition(
                question.acid().orElseThrow().reagent(), grams, Optional.of(new PhReading(ph, uncertainty)));
    }

    static StagedDose dose(DoseQuestion question) {
        return ((DoseOutcome.Dose) DoseAdvice.of(question, List.of()).outcome()).staged();
    }
}
