package tunside.dosing;

import tunside.chemistry.AcidProduct;

/**
 * How much acid a product gives while the mash or the liquor stands: strong lactic acid gives a part of its protons only on
 * hydrolysis, in hours to days, so between its direct share and all of it acts; the middle is taken (VU-2005).
 *
 * @param product poured or weighed
 */
public record ActingAcid(AcidProduct product) {
    /** Standard uncertainty of a label's strength and of a syringe together, relative (COMMON-PRACTICE). */
    private static final double HANDLING = 0.03;

    /** Acting acid, mmol per gram of product. */
    public double mmolPerGram() {
        return product.molPerKg() * (1 + product.directShare()) / 2;
    }

    /** Acting acid, mmol per millilitre of product at 20 degC. */
    public double mmolPerMl() {
        return mmolPerGram() * product.densityGPerMl();
    }

    /** Standard uncertainty of an addition, relative: handling, density, and the share that may come back late. */
    public double relativeUncertainty() {
        double density = product.densityUncertaintyGPerMl() / product.densityGPerMl();
        double slow = (1 - product.directShare()) / Math.sqrt(12) / ((1 + product.directShare()) / 2);
        return Math.sqrt(HANDLING * HANDLING + density * density + slow * slow);
    }
}
