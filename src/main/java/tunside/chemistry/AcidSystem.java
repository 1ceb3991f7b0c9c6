package tunside.chemistry;

import java.util.List;
import tunside.quantity.Temperature;

/**
 * An acid and the forms that it takes as it loses protons.
 *
 * @param id as tables and requests name it
 * @param topCharge charge of the most protonated form met in water: 0, or -1 where the first proton is always lost
 * @param steps the dissociation steps from there, most acid first; empty for a strong one-proton acid
 */
public record AcidSystem(String id, int topCharge, List<DissociationConstant> steps) {
    /** Charge of the barest anion that the solver knows. */
    static final int LOWEST_CHARGE = -4;

    public AcidSystem {
        steps = List.copyOf(steps);
        if (topCharge > 0 || topCharge - steps.size() < LOWEST_CHARGE) {
            throw new IllegalArgumentException("%s: charges must be from 0 to %s but are %s to %s"
                    .formatted(id, LOWEST_CHARGE, topCharge, topCharge - steps.size()));
        }
    }

    /** pK of step {@code 1..steps} at zero ionic strength. */
    public double pK(int step, Temperature temperature) {
        return steps.get(step - 1).pK(temperature);
    }

    /**
     * Mean charge of one mole at a pH, activities left out: monotone falling from {@code topCharge} by one a step.
     *
     * @return mol of charge per mol; its negative is the mean number of protons that a mole has delivered
     */
    public double meanCharge(double ph, Temperature temperature) {
        return at(temperature).meanCharge(ph);
    }

    /** The mean charge at one temperature, for many pH. */
    public ChargeCurve at(Temperature temperature) {
        double[] pK = new double[steps.size()];
        for (int i = 0; i < pK.length; i++) {
            pK[i] = steps.get(i).pK(temperature);
        }
        return new ChargeCurve(topCharge, pK);
    }

    /** Share of each form at a pH, most protonated first, activities left out; they sum to 1. */
    public double[] shares(double ph, Temperature temperature) {
        double[] shares = new double[steps.size() + 1];
        double[] logTerms = new double[shares.length];
        double largest = 0;
        for (int j = 1; j < shares.length; j++) {
            logTerms[j] = logTerms[j - 1] + ph - pK(j, temperature);
            largest = Math.max(largest, logTerms[j]);
        }
        double sum = 0;
        for (int j = 0; j < shares.length; j++) {
            shares[j] = Math.exp(Math.log(10) * (logTerms[j] - largest));
            sum += shares[j];
        }
        for (int j = 0; j < shares.length; j++) {
            shares[j] /= sum;
        }
        return shares;
    }

    /** Its id tells it apart: faster than all of it. */
    @Override
    public int hashCode() {
        return id.hashCode();
    }
}
