package tunside.mash;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tunside.quantity.Mass;

/**
 * All malt of a mash.
 *
 * @param parts 1 to 64, equal malts joined, in the order of their first mention
 */
public record Grist(List<GristPart> parts) {
    /** Most malts that a grist may name. */
    public static final int MOST_MALTS = 64;

    public Grist {
        if (parts.isEmpty() || parts.size() > MOST_MALTS) {
            throw new IllegalArgumentException(
                    "a grist must have 1 to %s malts but has %s".formatted(MOST_MALTS, parts.size()));
        }
        Map<Malt, Double> kilograms = new LinkedHashMap<>();
        for (GristPart part : parts) {
            kilograms.merge(part.malt(), part.mass().kilograms(), Double::sum);
        }
        List<GristPart> together = new ArrayList<>();
        kilograms.forEach((malt, mass) -> together.add(new GristPart(malt, new Mass(mass))));
        parts = List.copyOf(together);
    }

    /** Mass of the whole, kg. */
    public double kilograms() {
        double sum = 0;
        for (GristPart part : parts) {
            sum += part.mass().kilograms();
        }
        return sum;
    }
}
