package tunside.review;

import java.util.Arrays;
import java.util.List;
import tunside.chemistry.Acids;
import tunside.dosing.PhReading;
import tunside.mash.AcidAddition;
import tunside.mash.Estimate;
import tunside.mash.Experience;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MashModel;
import tunside.mash.MashPrediction;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/** Brews for tests whose readings are known. */
final class Records {
    static final double READING = 0.03;

    private Records() {}

    static GristPart part(Malt malt, double kilograms) {
        return new GristPart(malt, new Mass(kilograms));
    }

    static AcidAddition lactic(double millimoles) {
        return new AcidAddition(Acids.get("lactic"), Estimate.exactly(millimoles));
    }

    /** In distilled water at the ratio that the classes' pH hold at, so that pale malt alone lands on its own pH. */
    static Mash distilled(GristPart... parts) {
        Grist grist = new Grist(List.of(parts));
        return Mash.of(grist, Liquor.distilled(new Volume(4 * grist.kilograms())));
    }

    /** In water of 2 mEq/L of alkalinity and 3 mEq/L of calcium. */
    static Mash tap(GristPart... parts) {
        Grist grist = new Grist(List.of(parts));
        return Mash.of(grist, Liquor.titrated(new Volume(4 * grist.kilograms()), 2, 4.4, 7.6, 3, 0.5));
    }

    static MeasuredBrew brew(String label, Mash mash, double ph, MeasuredBrew.Dose... doses) {
        return new MeasuredBrew(label, mash, new PhReading(ph, READING), List.of(doses));
    }

    static MeasuredBrew.Dose dose(double millimoles, double ph) {
        return new MeasuredBrew.Dose(lactic(millimoles), new PhReading(ph, READING));
    }

    /** A brew as it is written down, read without noise on what it truly was, before and after doses. */
    static MeasuredBrew read(String label, Mash written, Mash truly, double... doses) {
        MeasuredBrew.Dose[] read = new MeasuredBrew.Dose[doses.length];
        Mash now = truly;
        for (int i = 0; i < doses.length; i++) {
            now = now.plus(lactic(doses[i]));
            read[i] = dose(doses[i], now.ph());
        }
        return brew(label, written, truly.ph(), read);
    }

    static MashModel after(MeasuredBrew... record) {
        return MashModel.standard()
                .withExperience(BrewReview.of(Arrays.asList(record)).experience());
    }

    static MashPrediction predicted(Mash mash, Experience experience) {
        return MashPrediction.of(mash.withModel(MashModel.standard().withExperience(experience)));
    }
}
