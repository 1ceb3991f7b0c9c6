package tunside.chemistry;

import java.util.Map;

/**
 * A salt or base that is weighed into water.
 *
 * @param id as requests name it, such as {@code calcium-chloride-dihydrate}
 * @param name in words
 * @param formula with its crystal water
 * @param molarMassGPerMol of that formula
 * @param ions mol of each ion per mol
 * @param carbon mol of inorganic carbon per mol
 * @param solubility in words
 * @param source id of the publication
 */
public record Salt(
        String id,
        String name,
        String formula,
        double molarMassGPerMol,
        Map<Ion, Double> ions,
        double carbon,
        String solubility,
        String source) {
    public Salt {
        ions = IonAmounts.of(ions);
    }

    /** What one gram adds to a water; its alkalinity is the charge that its ions leave over. */
    public Solution perGram() {
        return new Solution(ions, carbon, Map.of(), 0).scaled(1 / molarMassGPerMol);
    }

    /** Alkalinity that one gram brings, mEq; zero for a neutral salt. */
    public double alkalinityMeqPerGram() {
        return 1000 * Solution.charge(0, ions) / molarMassGPerMol;
    }

    /** Its id tells it apart: faster than all of it. */
    @Override
    public int hashCode() {
        return id.hashCode();
    }
}
