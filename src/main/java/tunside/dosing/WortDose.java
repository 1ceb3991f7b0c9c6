package tunside.dosing;

import java.util.List;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Volume;

/**
 * Wort or beer that is dosed: a straight line of buffering, known from the extract, from the malt behind it or from a bench
 * titration.
 *
 * @param volume above 0
 * @param prior buffering per litre, mEq/(L pH)
 * @param evidence what the buffering is known from
 */
public record WortDose(Volume volume, BufferingPrior prior, Evidence evidence) implements DosableLiquid {
    private static final String UNIT = "mEq/(L pH)";
    private static final double BATCH_LOG_DEVIATION = 0.03;
    private static final double ANCHOR_PH = 5;
    private static final double MOST_PH = 3;

    /** What the buffering is known from. */
    public enum Evidence {
        EXTRACT,
        MALT,
        BENCH_TITRATION
    }

    public WortDose {
        if (!(volume.litres() > 0)) {
            throw new IllegalArgumentException("volume (%s L) must be above 0".formatted(volume.litres()));
        }
    }

    /**
     * From the original extract.
     *
     * @param plato 1 to 35 % by mass
     * @param beer whether it is fermented
     */
    public static WortDose ofExtract(Volume volume, double plato, boolean beer) {
        if (!(plato >= 1 && plato <= 35)) {
            throw new IllegalArgumentException(
                    "original extract (%s %% by mass) must be from 1 to 35".formatted(plato));
        }
        return new WortDose(
                volume,
                new BufferingPrior(
                        plato * BufferingPriors.median("wort-per-extract"),
                        UNIT,
                        spread("wort-per-extract", beer),
                        BufferingPriors.source("wort-per-extract")),
                Evidence.EXTRACT);
    }

    /**
     * From the malt that went into it.
     *
     * @param maltKilograms above 0
     */
    public static WortDose ofMalt(Volume volume, double maltKilograms, boolean beer) {
        if (!(maltKilograms > 0)) {
            throw new IllegalArgumentException("malt (%s kg) must be above 0".formatted(maltKilograms));
        }
        return new WortDose(
                volume,
                new BufferingPrior(
                        maltKilograms / volume.litres() * BufferingPriors.median("wort-per-malt"),
                        UNIT,
                        spread("wort-per-malt", beer),
                        BufferingPriors.source("wort-per-malt")),
                Evidence.MALT);
    }

    private static double spread(String quantity, boolean beer) {
        return beer
                ? Math.hypot(
                        BufferingPriors.logStandardDeviation(quantity),
                        BufferingPriors.logStandardDeviation("beer-against-wort"))
                : BufferingPriors.logStandardDeviation(quantity);
    }

    /** Original extract of a wort from its specific gravity at 20 degC: {@code 259 - 259/SG}, good to 0.1 below 1.080. */
    public static double plato(double specificGravity) {
        if (!(specificGravity >= 1.003 && specificGravity <= 1.16)) {
            throw new IllegalArgumentException(
                    "specific gravity (%s) must be from 1.003 to 1.16".formatted(specificGravity));
        }
        return 259 - 259 / specificGravity;
    }

    /**
     * The same liquid after a sample of it was titrated: what is known now of the sample's buffering is what is known of the
     * batch, less sure by 3 % for measuring out.
     *
     * @param sample volume that was titrated, above 0
     */
    public WortDose titrated(Volume sample, PhReading start, double sharedUncertainty, List<PastAddition> history) {
        if (!(sample.litres() > 0)) {
            throw new IllegalArgumentException(
                    "volume of the sample (%s L) must be above 0".formatted(sample.litres()));
        }
        BufferLearning learning = BufferLearning.of(curve(sample.litres()), prior, start, sharedUncertainty, history);
        double[] moments = learning.now().logScaleMoments();
        return new WortDose(
                volume,
                new BufferingPrior(
                        prior.median() * Math.exp(moments[0]),
                        UNIT,
                        Math.hypot(moments[1], BATCH_LOG_DEVIATION),
                        "DERIVED"),
                Evidence.BENCH_TITRATION);
    }

    @Override
    public TitrationCurve curve() {
        return curve(volume.litres());
    }

    private TitrationCurve curve(double litres) {
        double meqPerPh = litres * prior.median();
        return new TitrationCurve(ph -> meqPerPh * (ANCHOR_PH - ph), ph -> 0);
    }

    /** Its median buffering over 3 pH. */
    @Override
    public double mostMeq() {
        return MOST_PH * volume.litres() * prior.median();
    }

    @Override
    public Supply acid(AcidProduct product, double stepGrams, double mostGrams) {
        double reach = mostMeq() / Reagent.millimolesPerGram(product).value();
        return new Supply(Reagent.of(product), stepGrams, Math.min(mostGrams, reach));
    }

    @Override
    public Supply base(Salt salt, double stepGrams) {
        double reach = mostMeq() / salt.alkalinityMeqPerGram();
        return new Supply(Reagent.of(salt, false), stepGrams, reach);
    }

    /** How well the buffering is known. */
    public Finding finding(boolean beer) {
        Outcome outcome = evidence == Evidence.BENCH_TITRATION ? Outcome.PASS : beer ? Outcome.CAUTION : Outcome.NOTE;
        return Finding.of(
                "dose.wort-buffering", outcome, "", prior.median(), prior.median() * prior.logStandardDeviation());
    }
}
