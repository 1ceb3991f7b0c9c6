package tunside.dosing;

import tunside.chemistry.AcidProduct;

/**
 * What stands in the vessel while acid is poured into water, no heat lost.
 *
 * @param heats of the acid
 * @param grams of mixture
 * @param percent its strength, %w/w
 * @param celsius its temperature
 */
record AcidDilutionMixture(AcidDilutionHeats heats, double grams, double percent, double celsius) {
    /** Temperature that the heats belong to. */
    private static final double REFERENCE_CELSIUS = 20;

    /** Points of a pour at which its temperature is looked at. */
    private static final int POINTS = 100;

    /** Water alone. */
    static AcidDilutionMixture water(AcidDilutionHeats heats, double grams, double celsius) {
        return new AcidDilutionMixture(heats, grams, 0, celsius);
    }

    /** After so many grams of acid have gone in and become one with it. */
    AcidDilutionMixture with(AcidProduct acid, double acidGrams, double acidCelsius) {
        double together = grams + acidGrams;
        double share = acidGrams / together;
        double strength = Math.min(acid.massPercent(), percent + share * (acid.massPercent() - percent));
        double heatJ = 1000
                * (grams * heats.heatKjPerGram(percent)
                        + acidGrams * heats.heatKjPerGram(acid.massPercent())
                        - together * heats.heatKjPerGram(strength));
        double warmth = grams * heats.capacityJPerGK(percent) * (celsius - REFERENCE_CELSIUS)
                + acidGrams * heats.capacityJPerGK(acid.massPercent()) * (acidCelsius - REFERENCE_CELSIUS);
        return new AcidDilutionMixture(
                heats,
                together,
                strength,
                REFERENCE_CELSIUS + (heatJ + warmth) / (together * heats.capacityJPerGK(strength)));
    }

    /** The same cooled down to a temperature, or as it is if it is colder. */
    AcidDilutionMixture cooledTo(double limitCelsius) {
        return new AcidDilutionMixture(heats, grams, percent, Math.min(celsius, limitCelsius));
    }

    /** How pouring so much acid into this goes. */
    AcidDilutionStage pouring(AcidProduct acid, double acidGrams, double acidCelsius) {
        AcidDilutionMixture end = with(acid, acidGrams, acidCelsius);
        double hottest = Math.max(celsius, end.celsius);
        for (int i = 1; i < POINTS; i++) {
            hottest = Math.max(hottest, with(acid, acidGrams * i / POINTS, acidCelsius).celsius);
        }
        return new AcidDilutionStage(acidGrams, end.percent, celsius, end.celsius, hottest, heats.halfWidthKelvin());
    }

    /** The most acid, up to a limit, that can go in while the temperature surely stays below another, g. */
    double mostAcidGrams(AcidProduct acid, double upToGrams, double acidCelsius, double limitCelsius) {
        double fits = 0;
        for (int i = 1; i <= POINTS; i++) {
            double next = upToGrams * i / POINTS;
            if (with(acid, next, acidCelsius).surelyBelow(celsius) > limitCelsius) {
                double tooMuch = next;
                for (int halving = 0; halving < 50; halving++) {
                    double middle = (fits + tooMuch) / 2;
                    if (with(acid, middle, acidCelsius).surelyBelow(celsius) > limitCelsius) {
                        tooMuch = middle;
                    } else {
                        fits = middle;
                    }
                }
                return fits;
            }
            fits = next;
        }
        return upToGrams;
    }

    private double surelyBelow(double startCelsius) {
        return celsius + AcidDilutionStage.halfWidth(celsius - startCelsius, heats.halfWidthKelvin());
    }
}
