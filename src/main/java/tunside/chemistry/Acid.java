package tunside.chemistry;

/**
 * An acid that can be dosed.
 *
 * @param id as requests name it
 * @param name in words
 * @param molarMassGPerMol of the water-free acid
 * @param protons that the formula can give, as {@code eq/L} counts them
 * @param system its dissociation
 * @param anion its anion in words
 * @param anionMolarMassGPerMol of the anion
 * @param eNumber European food additive number
 * @param source id of the publication
 */
public record Acid(
        String id,
        String name,
        double molarMassGPerMol,
        int protons,
        AcidSystem system,
        String anion,
        double anionMolarMassGPerMol,
        String eNumber,
        String source) {

    /** What one mole adds to a water: chloride and sulfate as ions, other anions with their dissociation. */
    public Solution perMole() {
        return switch (id) {
            case "hydrochloric" -> Solution.of(Ion.CHLORIDE, 1);
            case "sulfuric" -> Solution.of(Ion.SULFATE, 1);
            default -> Solution.of(system, 1);
        };
    }

    /** Its id tells it apart: faster than all of it. */
    @Override
    public int hashCode() {
        return id.hashCode();
    }
}
