package tunside.chemistry;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is dissolved in a kilogram of water, free of any pH. Immutable; two solutions mix by {@link #scaled} and {@link
 * #plus}.
 *
 * @param ions mol/kg, zero where absent; sulfate is the total of sulfate and bisulfate
 * @param carbon dissolved inorganic carbon, mol/kg
 * @param acids total of each weak acid in all its forms, mol/kg
 * @param base strong base without a listed cation, mol/kg; negative for a strong acid without a listed anion. It is
 *     the charge that the listed ions leave over when an alkalinity is given
 */
public record Solution(Map<Ion, Double> ions, double carbon, Map<AcidSystem, Double> acids, double base) {
    private static final double LARGEST_ROUNDING = 1e-12;

    /** Nothing dissolved. */
    public static final Solution WATER = new Solution(Map.of(), 0, Map.of(), 0);

    public Solution {
        ions = IonAmounts.changed(ions, (ion, molPerKg) -> amount(ion.symbol(), molPerKg));
        acids = acids.isEmpty() ? Map.of() : ordered(acids);
        carbon = amount("carbon", carbon);
        if (!Double.isFinite(base)) {
            throw new IllegalArgumentException("strong base (%s mol/kg) must be finite".formatted(base));
        }
    }

    /** In their order: sums must not depend on hashing. */
    private static Map<AcidSystem, Double> ordered(Map<AcidSystem, Double> acids) {
        Map<AcidSystem, Double> ordered = new LinkedHashMap<>();
        acids.forEach((acid, amount) -> ordered.put(acid, amount(acid.id(), amount)));
        return Collections.unmodifiableMap(ordered);
    }

    /** An amount that is there; the rounding of a difference may leave a trace below zero, which is none. */
    private static double amount(String what, double molPerKg) {
        if (!(molPerKg >= -LARGEST_ROUNDING && molPerKg < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "%s (%s mol/kg) must be finite and not negative".formatted(what, molPerKg));
        }
        return Math.max(0, molPerKg);
    }

    /** One ion alone. */
    public static Solution of(Ion ion, double molPerKg) {
        return new Solution(Map.of(ion, molPerKg), 0, Map.of(), 0);
    }

    /** One weak acid alone. */
    public static Solution of(AcidSystem acid, double molPerKg) {
        return new Solution(Map.of(), 0, Map.of(acid, molPerKg), 0);
    }

    /** Inorganic carbon alone, as CO2(aq). */
    public static Solution ofCarbon(double molPerKg) {
        return new Solution(Map.of(), molPerKg, Map.of(), 0);
    }

    /** Strong base (negative: strong acid) alone. */
    public static Solution ofBase(double molPerKg) {
        return new Solution(Map.of(), 0, Map.of(), molPerKg);
    }

    /** Concentration of an ion, mol/kg. */
    public double ion(Ion ion) {
        return IonAmounts.amount(ions, ion);
    }

    /** Both together in the same kilogram. */
    public Solution plus(Solution other) {
        Map<Ion, Double> allIons = IonAmounts.of(ions).plus(other.ions);
        Map<AcidSystem, Double> allAcids = new LinkedHashMap<>(acids);
        other.acids.forEach((acid, amount) -> allAcids.merge(acid, amount, Double::sum));
        return new Solution(allIons, carbon + other.carbon, allAcids, base + other.base);
    }

    /** Every amount times a factor. */
    public Solution scaled(double factor) {
        Map<Ion, Double> scaledIons = IonAmounts.changed(ions, (ion, amount) -> amount * factor);
        Map<AcidSystem, Double> scaledAcids = new LinkedHashMap<>();
        acids.forEach((acid, amount) -> scaledAcids.put(acid, amount * factor));
        return new Solution(scaledIons, carbon * factor, scaledAcids, base * factor);
    }

    /** The same with another amount of inorganic carbon. */
    public Solution withCarbon(double molPerKg) {
        return new Solution(ions, molPerKg, acids, base);
    }

    /** The same with another amount of strong base. */
    public Solution withBase(double molPerKg) {
        return new Solution(ions, carbon, acids, molPerKg);
    }

    /** Charge of the ions and the strong base, mol/kg; sulfate fully dissociated. This is what alkalinity measures. */
    public double fixedCharge() {
        return charge(base, ions);
    }

    /** A charge and that of ions beside it, mol. */
    static double charge(double base, Map<Ion, Double> ions) {
        double charge = base;
        for (Ion ion : Ion.ALL) {
            charge += ion.charge() * IonAmounts.amount(ions, ion);
        }
        return charge;
    }
}
