package tunside.mash;

import java.util.Optional;
import tunside.quantity.Colour;

/**
 * A generic class of malt, as {@code malt-classes.csv} and {@code malts.csv} list it.
 *
 * @param id as requests name it
 * @param name in words
 * @param measured whether published measurements of this class exist
 * @param lowestColour of the malts measured, or usual for the class
 * @param highestColour of the malts measured, or usual for the class
 * @param liquorRatioLPerKg litres of liquor per kg of malt at which the distilled-water pH holds
 * @param distilledWaterPh pH of a mash of this malt alone in distilled water; at 1 EBC where {@code phPerDecade} is not 0
 * @param phPerDecade change of that pH per tenfold colour; 0 where the class decides and colour does not
 * @param buffering mEq/(kg pH)
 * @param lacticAcidPercent lactic acid made in or sprayed on the malt, % of its mass
 * @param source id of the publication behind the class
 */
public record MaltClass(
        String id,
        String name,
        boolean measured,
        Colour lowestColour,
        Colour highestColour,
        double liquorRatioLPerKg,
        ClassValue distilledWaterPh,
        double phPerDecade,
        ClassValue buffering,
        Optional<ClassValue> lacticAcidPercent,
        String source) {

    /** Whether the distilled-water pH of this class follows its colour. */
    public boolean followsColour() {
        return phPerDecade != 0;
    }

    /**
     * Distilled-water pH of one lot known by its class only.
     *
     * <p>Where the pH follows colour: outside the measured colours the line is continued and the uncertainty grows by
     * half of the continued part; without a colour the geometric middle is taken and the uncertainty covers the class
     * as a rectangular distribution.
     */
    public Estimate distilledWaterPh(Optional<Colour> colour) {
        double lot = distilledWaterPh.lotUncertainty();
        if (!followsColour()) {
            return new Estimate(distilledWaterPh.value(), lot);
        }
        double low = Math.log10(lowestColour.ebc());
        double high = Math.log10(highestColour.ebc());
        if (colour.isEmpty()) {
            double spread = Math.abs(phPerDecade) * (high - low) / Math.sqrt(12);
            return new Estimate(distilledWaterPh.value() + phPerDecade * (low + high) / 2, Math.hypot(lot, spread));
        }
        double decades = Math.log10(Math.max(1, colour.get().ebc()));
        double beyond = Math.max(0, Math.max(low - decades, decades - high));
        double extrapolation = Math.abs(phPerDecade) * beyond / 2;
        return new Estimate(distilledWaterPh.value() + phPerDecade * decades, Math.hypot(lot, extrapolation));
    }

    /** Whether a colour lies among those that the class was measured at. */
    public boolean covers(Colour colour) {
        return colour.ebc() >= lowestColour.ebc() && colour.ebc() <= highestColour.ebc();
    }

    /** Its id tells it apart: faster than all of it. */
    @Override
    public int hashCode() {
        return id.hashCode();
    }
}
