package tunside.dosing;

import tunside.chemistry.AcidProduct;
import tunside.chemistry.ProtonBalance;
import tunside.chemistry.Salt;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.Estimate;
import tunside.mash.GristPart;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MashModel;
import tunside.mash.PhFunction;
import tunside.quantity.Volume;

/**
 * A mash that is dosed: the malts' buffering is known within a factor, the carbonate of the liquor and what else went in
 * before is known. The balance is that of {@link Mash}, shifted to the pH that was measured: what the malts' own pH is does
 * not matter any more.
 *
 * @param mash as it was when its pH was first measured
 * @param function of this mash
 */
public record MashDose(Mash mash, PhFunction function) implements DosableLiquid {
    private static final double WITHIN_DEVIATIONS = 2.5;
    private static final double BEYOND_DEVIATIONS = 4;

    /** More acid than this no grist explains: it lowers a mash of the strongest published buffering by 1.5 pH. */
    private static final double MOST_MEQ_PER_KG = 90;

    /** A mash as it was when its pH was first measured. */
    public MashDose(Mash mash) {
        this(mash, PhFunction.of(mash));
    }

    @Override
    public TitrationCurve curve() {
        ProtonBalance malt = function.maltBalance();
        ProtonBalance other = function.otherBalance();
        return TitrationCurve.tabulated(malt::uptakeMeq, other::uptakeMeq);
    }

    /**
     * Buffering of the malts before any acid went in: the median from their classes or measurements. Malts known by class
     * share the published spread, of which the household's own brews narrow what all its mashes have in common; the scatter
     * from lot to lot stays. Measured malts have their own spread.
     */
    @Override
    public BufferingPrior prior() {
        double classSpread = Math.hypot(lotLogDeviation(), commonLogDeviation(mash.model()));
        double byClass = 0;
        double measuredSquares = 0;
        double all = 0;
        for (GristPart part : mash.grist().parts()) {
            Malt malt = part.malt();
            double kilograms = part.mass().kilograms();
            if (malt.measured().buffering().isPresent()) {
                var curve = malt.measured().buffering().get();
                double buffering = kilograms * curve.bufferingMeqPerKgPh();
                all += buffering;
                measuredSquares += Math.pow(buffering * curve.relativeStandardUncertainty(), 2);
            } else {
                double buffering = kilograms * malt.maltClass().buffering().value();
                all += buffering;
                byClass += buffering;
            }
        }
        double spread = Math.sqrt(Math.pow(byClass * classSpread, 2) + measuredSquares) / all;
        double median =
                function.maltBalance().bufferingMeqPerPh(5.4) / mash.grist().kilograms();
        return new BufferingPrior(median, "mEq/(kg pH)", Math.max(0.02, spread), BufferingPriors.source("mash"));
    }

    /** What the published spread holds beside that of method and crush, which a household's mashes have in common. */
    static double lotLogDeviation() {
        double all = BufferingPriors.logStandardDeviation("mash");
        double common = commonLogDeviation(MashModel.standard());
        return Math.sqrt(all * all - common * common);
    }

    private static double commonLogDeviation(MashModel model) {
        return model.bufferingScale().standardUncertainty()
                / model.bufferingScale().value();
    }

    @Override
    public Volume volume() {
        return mash.liquor().volume();
    }

    @Override
    public Supply acid(AcidProduct product, double stepGrams, double mostGrams) {
        double reach = mostMeq() / Reagent.millimolesPerGram(product).value();
        return new Supply(Reagent.of(product), stepGrams, Math.min(mostGrams, reach));
    }

    /** Of chalk no more than can act. */
    @Override
    public Supply base(Salt salt, double stepGrams) {
        double reach = Bases.isChalk(salt) ? mash.chalkLimitGrams() : mostMeq() / salt.alkalinityMeqPerGram();
        return new Supply(Reagent.of(salt, true), stepGrams, reach);
    }

    @Override
    public double mostMeq() {
        double litres = mash.liquor().volume().litres();
        return MOST_MEQ_PER_KG * mash.grist().kilograms()
                + LiquorDose.mostMeq(mash.liquor().alkalinityMeqPerL(), litres);
    }

    /** Whether the first reading is one that this grist and liquor can have: caution from 2.5, stop from 4 deviations. */
    public Finding finding(PhReading start) {
        Estimate expected = function.estimate();
        double deviations = Math.abs(start.ph() - expected.value())
                / Math.hypot(expected.standardUncertainty(), start.standardUncertainty());
        Outcome outcome = deviations < WITHIN_DEVIATIONS
                ? Outcome.PASS
                : deviations < BEYOND_DEVIATIONS ? Outcome.CAUTION : Outcome.STOP;
        return Finding.of("dose.measured-against-grist", outcome, "/measuredPh", start.ph(), expected.value());
    }
}
