package tunside.dosing;

import java.util.Optional;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.Mash;
import tunside.mash.MashPrediction;
import tunside.quantity.Volume;
import tunside.water.Water;

/** A measured mash against what its grist and liquor let expect. */
public final class MeasuredMash {
    private static final double CAUTION_DEVIATIONS = 2.5;
    private static final double STOP_DEVIATIONS = 4;

    /** More acid than this no grist explains: it lowers a mash of the strongest published buffering by 1.5 pH. */
    private static final double MOST_MEQ_PER_KG = 90;

    private static final double MOST_TIMES_ALKALINITY = 2;
    private static final double MOST_EXTRA_MEQ_PER_L = 2;

    private MeasuredMash() {}

    /** Whether the measured pH fits the prediction: caution from 2.5, stop from 4 standard deviations of both together. */
    public static Finding against(Mash mash, double measuredPh, double standardUncertainty) {
        MashPrediction prediction = MashPrediction.of(mash);
        double deviations = Math.abs(measuredPh - prediction.ph())
                / Math.hypot(prediction.standardUncertainty(), standardUncertainty);
        Outcome outcome = deviations >= STOP_DEVIATIONS
                ? Outcome.STOP
                : deviations >= CAUTION_DEVIATIONS ? Outcome.CAUTION : Outcome.PASS;
        return Finding.of("dose.measured-against-grist", outcome, "", measuredPh, prediction.ph());
    }

    /** Most acid that makes sense: 90 mEq per kg of malt, and twice the liquor's alkalinity with 2 mEq/L more. */
    public static double mostMillimoles(Optional<Mash> mash, Volume volume, Water water) {
        double liquor = volume.litres()
                * (MOST_TIMES_ALKALINITY * Math.max(0, water.alkalinityMeqPerL()) + MOST_EXTRA_MEQ_PER_L);
        return liquor + mash.map(m -> MOST_MEQ_PER_KG * m.grist().kilograms()).orElse(0.0);
    }
}
