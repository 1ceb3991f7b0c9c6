package tunside.mash;

import java.util.LinkedHashMap;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * The parameters of the proton balance. One consistent set: carbonate kept, buffering about 38 mEq/(kg pH), Kolbach's
 * divisors. What is learned from measured mashes comes in by {@link #withExperience}.
 *
 * @param bias shift of every malt's own pH that the model itself may lack, pH
 * @param biasOfMaltTypes further shift, common to all malts known by their class only, pH
 * @param bufferingScale factor on the buffering of all malts known by their class only: method, crush and laboratory
 * @param calciumDivisor equivalents of calcium that free one proton (KOLBACH-1953)
 * @param magnesiumDivisor equivalents of magnesium that free one proton (KOLBACH-1953)
 * @param carbonDioxideLost share of the carbon dioxide that leaves the mash, 0 to 1
 * @param dilutionPhPerDecade rise of a malt's own pH per tenfold liquor ratio
 * @param chalkDissolved share of stirred-in chalk that dissolves
 * @param chalkLimitMgPerL chalk beyond this changes nothing more
 * @param restShift of the malts' own pH from {@code restSettledMinutes} to {@code restEndMinutes}
 * @param restSettledMinutes after which the pH moves only slowly
 * @param restEndMinutes at which the whole shift has come
 * @param decoctionShift of the malts' own pH by boiling a part of the mash
 * @param crushUncertainty standard uncertainty of the factor that a stated mill gap puts on the buffering
 * @param maltPhBetweenBrews standard deviation of a malt's own pH from one brew to the next, of the same product
 * @param handling uncertainties of weighing, measuring and analysing
 * @param experience what was learned from measured mashes; its means stand in the parameters above as well
 */
public record MashModel(
        Estimate bias,
        Estimate biasOfMaltTypes,
        Estimate bufferingScale,
        Estimate calciumDivisor,
        Estimate magnesiumDivisor,
        Estimate carbonDioxideLost,
        Estimate dilutionPhPerDecade,
        Estimate chalkDissolved,
        double chalkLimitMgPerL,
        Estimate restShift,
        double restSettledMinutes,
        double restEndMinutes,
        Estimate decoctionShift,
        double crushUncertainty,
        double maltPhBetweenBrews,
        Handling handling,
        Experience experience) {
    private static final double SMALLEST_SHARE = 0.01;
    private static final MashModel STANDARD = load();

    public MashModel {
        if (!(bufferingScale.value() >= 0.1 && bufferingScale.value() <= 10)) {
            throw new IllegalArgumentException(
                    "buffering scale (%s) must be from 0.1 to 10".formatted(bufferingScale.value()));
        }
        if (!(calciumDivisor.value() > 0 && magnesiumDivisor.value() > 0)) {
            throw new IllegalArgumentException("divisors of calcium (%s) and magnesium (%s) must be above 0"
                    .formatted(calciumDivisor.value(), magnesiumDivisor.value()));
        }
        if (!(carbonDioxideLost.value() >= 0 && carbonDioxideLost.value() <= 1)) {
            throw new IllegalArgumentException(
                    "share of carbon dioxide lost (%s) must be from 0 to 1".formatted(carbonDioxideLost.value()));
        }
        if (!(Math.abs(bias.value()) <= 2 && Math.abs(biasOfMaltTypes.value()) <= 2)) {
            throw new IllegalArgumentException(
                    "biases (%s, %s) must lie within 2 pH".formatted(bias.value(), biasOfMaltTypes.value()));
        }
    }

    /**
     * Standard uncertainties of what the brewer does and states, where nothing better is known.
     *
     * @param maltMassRelative of each malt's mass
     * @param liquorVolumeRelative of the liquor's volume
     * @param acidAmountRelative of each acid: label and syringe
     * @param saltMassRelative of each salt: scales and purity
     * @param alkalinityRelative of the water's alkalinity
     * @param alkalinityFloorMeqPerL of an alkalinity near zero
     * @param hardnessRelative of calcium and of magnesium
     * @param samplePh of the water's pH
     * @param measuredMaltPh of a malt's distilled-water pH where the caller gives none
     * @param measuredBufferingRelative of a malt's buffering where the caller gives none
     * @param measuredAcidityRelative of a malt's acidity where the caller gives none
     * @param labelledLacticAcidPercent of an acidulated malt's lactic acid as labelled, % of its mass
     */
    public record Handling(
            double maltMassRelative,
            double liquorVolumeRelative,
            double acidAmountRelative,
            double saltMassRelative,
            double alkalinityRelative,
            double alkalinityFloorMeqPerL,
            double hardnessRelative,
            double samplePh,
            double measuredMaltPh,
            double measuredBufferingRelative,
            double measuredAcidityRelative,
            double labelledLacticAcidPercent) {}

    /** The set of {@code mash-model.csv}. */
    public static MashModel standard() {
        return STANDARD;
    }

    /** The same with another bias of the malts known by their class. */
    public MashModel withBiasOfMaltTypes(Estimate shift) {
        return with(bias, shift, bufferingScale, carbonDioxideLost, experience);
    }

    /** The same with another factor on the buffering of the malts known by their class. */
    public MashModel withBufferingScale(Estimate scale) {
        return with(bias, biasOfMaltTypes, scale, carbonDioxideLost, experience);
    }

    /**
     * The same after what a household's own mashes have taught. The parameters that the experience holds take its means and
     * uncertainties, and no longer err independently of each other.
     */
    public MashModel withExperience(Experience learnt) {
        int toAll = learnt.indexOf(LearntQuantity.MODEL_BIAS);
        int toTypes = learnt.indexOf(LearntQuantity.MALT_TYPES_BIAS);
        int toBuffering = learnt.indexOf(LearntQuantity.BUFFERING_SCALE);
        return with(
                toAll < 0 ? bias : learnt.estimate(toAll),
                toTypes < 0 ? biasOfMaltTypes : learnt.estimate(toTypes),
                toBuffering < 0 ? bufferingScale : exponential(learnt.estimate(toBuffering)),
                carbonDioxideLost,
                learnt);
    }

    private MashModel with(
            Estimate toAll, Estimate toTypes, Estimate scale, Estimate carbonDioxide, Experience learnt) {
        return new MashModel(
                toAll,
                toTypes,
                scale,
                calciumDivisor,
                magnesiumDivisor,
                carbonDioxide,
                dilutionPhPerDecade,
                chalkDissolved,
                chalkLimitMgPerL,
                restShift,
                restSettledMinutes,
                restEndMinutes,
                decoctionShift,
                crushUncertainty,
                maltPhBetweenBrews,
                handling,
                learnt);
    }

    private static Estimate exponential(Estimate logarithm) {
        double value = Math.exp(logarithm.value());
        return new Estimate(value, value * logarithm.standardUncertainty());
    }

    /**
     * Standard deviation of what all products of a class that a household buys have in common: how unsure the published
     * mean is, that of {@code n} products. At most half of the variance that outlasts a brew; that half where nothing was
     * published. Where the pH follows colour, half of the whole variance: the line itself may be off.
     */
    public double classOffsetUncertainty(MaltClass maltClass) {
        return Math.sqrt(classVariance(maltClass));
    }

    /** Standard deviation of a product from its class: what is left beside class and brew. */
    public double productOffsetUncertainty(MaltClass maltClass) {
        return Math.sqrt(lastingVariance(maltClass) - classVariance(maltClass));
    }

    private double classVariance(MaltClass maltClass) {
        ClassValue ph = maltClass.distilledWaterPh();
        double lasting = lastingVariance(maltClass);
        if (maltClass.followsColour()) {
            return Math.min(square(ph.lotUncertainty()) / 2, (1 - SMALLEST_SHARE) * lasting);
        }
        double ofMean = ph.n() == 0 ? lasting : square(ph.standardDeviation()) / ph.n();
        return Math.min(ofMean, lasting / 2);
    }

    /** Variance of a lot from its class less that from brew to brew. */
    private double lastingVariance(MaltClass maltClass) {
        double lot = square(maltClass.distilledWaterPh().lotUncertainty());
        return lot - Math.min(square(maltPhBetweenBrews), lot / 2);
    }

    static double square(double value) {
        return value * value;
    }

    /** The same with another share of carbon dioxide lost. */
    public MashModel withCarbonDioxideLost(Estimate share) {
        return with(bias, biasOfMaltTypes, bufferingScale, share, experience);
    }

    /**
     * Shift of the malts' own pH by the rest: none up to {@code restSettledMinutes}, then growing with the logarithm of
     * time up to {@code restEndMinutes}.
     */
    public Estimate shiftAfter(double minutes) {
        double decades = Math.log(minutes / restSettledMinutes) / Math.log(restEndMinutes / restSettledMinutes);
        double share = Math.max(0, Math.min(1, decades));
        return new Estimate(share * restShift.value(), restShift.standardUncertainty());
    }

    private static MashModel load() {
        Map<String, Row> rows = new LinkedHashMap<>();
        Table.read("mash-model.csv").rows().forEach(row -> rows.put(row.text("parameter"), row));
        return new MashModel(
                estimate(rows, "bias"),
                estimate(rows, "bias-of-malt-types"),
                estimate(rows, "buffering-scale"),
                estimate(rows, "calcium-divisor"),
                estimate(rows, "magnesium-divisor"),
                estimate(rows, "carbon-dioxide-lost"),
                estimate(rows, "dilution-per-decade"),
                estimate(rows, "chalk-dissolved"),
                estimate(rows, "chalk-limit").value(),
                estimate(rows, "rest-shift"),
                estimate(rows, "rest-settled").value(),
                estimate(rows, "rest-end").value(),
                estimate(rows, "decoction-shift"),
                uncertainty(rows, "crush-uncertainty"),
                uncertainty(rows, "malt-ph-between-brews"),
                new Handling(
                        uncertainty(rows, "malt-mass-relative"),
                        uncertainty(rows, "liquor-volume-relative"),
                        uncertainty(rows, "acid-amount-relative"),
                        uncertainty(rows, "salt-mass-relative"),
                        uncertainty(rows, "alkalinity-relative"),
                        uncertainty(rows, "alkalinity-floor"),
                        uncertainty(rows, "hardness-relative"),
                        uncertainty(rows, "sample-ph"),
                        uncertainty(rows, "measured-malt-ph"),
                        uncertainty(rows, "measured-buffering-relative"),
                        uncertainty(rows, "measured-acidity-relative"),
                        uncertainty(rows, "labelled-lactic-acid")),
                Experience.NONE);
    }

    private static Estimate estimate(Map<String, Row> rows, String parameter) {
        Row row = rows.get(parameter);
        if (row == null) {
            throw rows.values().iterator().next().fault("there is no parameter '%s'".formatted(parameter));
        }
        return new Estimate(row.number("value"), row.number("standard_uncertainty", 0, 10));
    }

    private static double uncertainty(Map<String, Row> rows, String parameter) {
        return estimate(rows, parameter).standardUncertainty();
    }
}
