package tunside.mash;

import java.util.Map;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;
import tunside.water.Water;

/**
 * The water that the malt is mashed in.
 *
 * @param volume above 0
 * @param solution what is dissolved in it
 * @param samplePh pH of the water when it was analysed, 2 to 12: it fixes how much carbon dioxide the water holds
 */
public record Liquor(Volume volume, Solution solution, double samplePh) {
    private static final double LOWEST_PH = 2;
    private static final double HIGHEST_PH = 12;
    private static final Temperature ROOM = new Temperature(25);

    public Liquor {
        if (!(volume.litres() > 0)) {
            throw new IllegalArgumentException(
                    "volume of the liquor (%s L) must be above 0".formatted(volume.litres()));
        }
        if (!(samplePh >= LOWEST_PH && samplePh <= HIGHEST_PH)) {
            throw new IllegalArgumentException("pH of the water (%s) must be from 2 to 12".formatted(samplePh));
        }
    }

    /** Water with nothing in it. */
    public static Liquor distilled(Volume volume) {
        return new Liquor(volume, Solution.WATER, 7);
    }

    /** A volume of a water whose report has been read. */
    public static Liquor of(Volume volume, Water water) {
        return new Liquor(volume, water.solution(), Math.max(LOWEST_PH, Math.min(HIGHEST_PH, water.samplePh())));
    }

    /**
     * Water known by a titration and its hardness, read with the constants of the mash: 25 degC, no activities.
     *
     * @param alkalinityMeqPerL acid used down to the end point, not negative
     * @param endPointPh of that titration, 3.5 to 5.5
     * @param samplePh 6 to 9.5
     */
    public static Liquor titrated(
            Volume volume,
            double alkalinityMeqPerL,
            double endPointPh,
            double samplePh,
            double calciumMeqPerL,
            double magnesiumMeqPerL) {
        double consumed = alkalinityMeqPerL - 1000 * Math.pow(10, -endPointPh);
        double carbon = consumed <= 0 ? 0 : consumed / (charge(endPointPh) - charge(samplePh)) / 1000;
        double alkalinity = -carbon * charge(samplePh);
        double calcium = calciumMeqPerL / 2000;
        double magnesium = magnesiumMeqPerL / 2000;
        return new Liquor(
                volume,
                new Solution(
                        Map.of(Ion.CALCIUM, calcium, Ion.MAGNESIUM, magnesium),
                        carbon,
                        Map.of(),
                        alkalinity - 2 * calcium - 2 * magnesium),
                samplePh);
    }

    /** Charge that the water's ions leave over, mEq/L: its true alkalinity, without the free acid of an end point. */
    public double alkalinityMeqPerL() {
        return 1000 * solution.fixedCharge();
    }

    /** Calcium, mEq/L. */
    public double calciumMeqPerL() {
        return 2000 * solution.ion(Ion.CALCIUM);
    }

    /** Magnesium, mEq/L. */
    public double magnesiumMeqPerL() {
        return 2000 * solution.ion(Ion.MAGNESIUM);
    }

    /** Inorganic carbon, mmol/L. */
    public double carbonMmolPerL() {
        return 1000 * solution.carbon();
    }

    /** How far the carbon is off where the sample's pH is off by this much, mmol/L. */
    double carbonUncertaintyMmolPerL(double phUncertainty) {
        return carbonMmolPerL() * Math.abs(charge(samplePh) / charge(samplePh - phUncertainty) - 1);
    }

    private static double charge(double ph) {
        return Acids.CARBONIC.meanCharge(ph, ROOM);
    }
}
