package tunside.mash.plan;

import java.util.ArrayList;
import java.util.List;
import tunside.mash.AcidAddition;
import tunside.mash.Addition;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Mash;
import tunside.mash.SaltAddition;
import tunside.quantity.Mass;
import tunside.quantity.Volume;
import tunside.water.Water;
import tunside.water.WaterPart;

/**
 * What additions are asked for.
 *
 * @param mash as it would be without a plan; its liquor is the undiluted one
 * @param water the same liquor as a water, for blending
 * @param aim the pH wanted
 * @param supplies what is at hand, in the order of the request; at most one of them water
 * @param wants ranges of ions
 * @param mostLactateMgPerL lactate accepted in the liquor, not negative
 */
public record PlanQuestion(
        Mash mash, Water water, PhAim aim, List<PlanSupply> supplies, List<IonWant> wants, double mostLactateMgPerL) {
    /** An addition below this is none. */
    private static final double NOTHING = 1e-12;

    public PlanQuestion {
        supplies = List.copyOf(supplies);
        wants = List.copyOf(wants);
        if (!(mostLactateMgPerL >= 0 && mostLactateMgPerL < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "accepted lactate (%s mg/L) must be finite and not negative".formatted(mostLactateMgPerL));
        }
    }

    /** Whether acid is in the mash before any plan: added, in the liquor, or in acidulated malt. */
    public boolean hasAcid() {
        return mash.additions().stream().anyMatch(one -> one instanceof AcidAddition && one.millimolesAdded() > 0)
                || !mash.liquor().solution().acids().isEmpty()
                || acidulatedKilograms(mash.grist()) > 0;
    }

    /** Whether a base is in the mash before any plan. */
    public boolean hasBase() {
        return mash.additions().stream()
                .anyMatch(one -> one instanceof SaltAddition salt
                        && salt.mass().grams() > 0
                        && PlanSupply.OfSalt.isBase(salt.salt()));
    }

    /** Malt of a grist that carries lactic acid of its own, kg. */
    public static double acidulatedKilograms(Grist grist) {
        double kilograms = 0;
        for (GristPart part : grist.parts()) {
            if (part.malt().maltClass().lacticAcidPercent().isPresent()) {
                kilograms += part.mass().kilograms();
            }
        }
        return kilograms;
    }

    /**
     * The mash with a plan carried out.
     *
     * @param amounts of each supply, in its measure, in their order
     */
    public Mash with(double[] amounts) {
        List<Addition> additions = new ArrayList<>(mash.additions());
        List<GristPart> parts = new ArrayList<>(mash.grist().parts());
        Liquor liquor = mash.liquor();
        for (int i = 0; i < amounts.length; i++) {
            if (amounts[i] <= NOTHING) {
                continue;
            }
            PlanSupply supply = supplies.get(i);
            if (supply instanceof PlanSupply.OfAcid acid) {
                additions.add(acid.addition(amounts[i]));
            } else if (supply instanceof PlanSupply.OfSalt salt) {
                additions.add(salt.addition(amounts[i]));
            } else if (supply instanceof PlanSupply.OfMalt malt) {
                parts.add(new GristPart(malt.malt(), new Mass(amounts[i])));
            } else if (supply instanceof PlanSupply.OfWater other) {
                liquor = blend(other.water(), amounts[i]);
            }
        }
        return new Mash(new Grist(parts), liquor, additions, mash.conditions(), mash.model());
    }

    /** The liquor with some of it replaced. */
    private Liquor blend(Water other, double litres) {
        double all = mash.liquor().volume().litres();
        double kept = Math.max(0, all - litres);
        return Liquor.of(
                mash.liquor().volume(),
                Water.blend(
                        List.of(new WaterPart(new Volume(kept), water), new WaterPart(new Volume(all - kept), other))));
    }

    /** The same with one supply changed. */
    PlanQuestion withSupply(int index, PlanSupply supply) {
        List<PlanSupply> changed = new ArrayList<>(supplies);
        changed.set(index, supply);
        return new PlanQuestion(mash, water, aim, changed, wants, mostLactateMgPerL);
    }
}
