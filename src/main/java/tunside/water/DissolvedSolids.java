package tunside.water;

import java.util.Map;
import tunside.chemistry.Ion;

/** The total dissolved solids that a water's ions make up (SM-1030E). */
public final class DissolvedSolids {
    private DissolvedSolids() {}

    /**
     * Ions, and 0.6 of the alkalinity as CaCO3, mg/L.
     *
     * @param alkalinityMeqPerL negative counts as none
     */
    public static double mgPerL(Map<Ion, Double> mmolPerL, double alkalinityMeqPerL) {
        double sum = WaterModel.value("solids-alkalinity-share")
                * WaterProfile.CALCIUM_CARBONATE_G_PER_MOL
                / 2
                * Math.max(0, alkalinityMeqPerL);
        for (Map.Entry<Ion, Double> entry : mmolPerL.entrySet()) {
            sum += entry.getKey().molarMassGPerMol() * entry.getValue();
        }
        return sum;
    }
}
