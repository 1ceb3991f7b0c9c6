package tunside.mash;

import java.util.ArrayList;
import java.util.List;
import tunside.chemistry.ProtonBalance;

/**
 * A mash: malt, liquor and what else goes in.
 *
 * @param grist all malt
 * @param liquor all water in the mash
 * @param additions acids, salts and bases; at most 32
 * @param conditions crush and rest, where known
 * @param model parameters of the proton balance
 */
public record Mash(Grist grist, Liquor liquor, List<Addition> additions, MashConditions conditions, MashModel model) {
    /** Most additions to one mash. */
    public static final int MOST_ADDITIONS = 32;

    /** Most of any one addition, mmol per litre of liquor: thirty times what a mash can ask for. */
    public static final double MOST_MMOL_PER_L = 250;

    public Mash {
        additions = List.copyOf(additions);
        if (additions.size() > MOST_ADDITIONS) {
            throw new IllegalArgumentException(
                    "a mash must have at most %s additions but has %s".formatted(MOST_ADDITIONS, additions.size()));
        }
        for (Addition addition : additions) {
            double mmolPerL = addition.millimolesAdded() / liquor.volume().litres();
            if (!(mmolPerL <= MOST_MMOL_PER_L)) {
                throw new IllegalArgumentException("an addition must be at most %s mmol per litre of liquor but is %s"
                        .formatted(MOST_MMOL_PER_L, mmolPerL));
            }
        }
    }

    /** A mash by the standard model, crush and rest unstated. */
    public static Mash of(Grist grist, Liquor liquor, Addition... additions) {
        return new Mash(grist, liquor, List.of(additions), MashConditions.UNSTATED, MashModel.standard());
    }

    /** The same with something more in it. */
    public Mash plus(Addition addition) {
        List<Addition> more = new ArrayList<>(additions);
        more.add(addition);
        return new Mash(grist, liquor, more, conditions, model);
    }

    /** The same with other additions. */
    public Mash withAdditions(List<Addition> others) {
        return new Mash(grist, liquor, others, conditions, model);
    }

    /** The same by another model. */
    public Mash withModel(MashModel other) {
        return new Mash(grist, liquor, additions, conditions, other);
    }

    /** Liquor to grist, L/kg. */
    public double liquorRatioLPerKg() {
        return liquor.volume().litres() / grist.kilograms();
    }

    /** Most chalk that can still change the pH of this mash, g. */
    public double chalkLimitGrams() {
        return model.chalkLimitMgPerL() * liquor.volume().litres() / 1000;
    }

    /** Grams of a salt that can act: all, but of chalk no more than {@link #chalkLimitGrams}. */
    double actingGrams(SaltAddition salt) {
        return salt.isChalk()
                ? Math.min(salt.mass().grams(), chalkLimitGrams())
                : salt.mass().grams();
    }

    /** Grams of a salt that dissolve: all, but of chalk only a share of what can act. */
    double dissolvedGrams(SaltAddition salt) {
        return actingGrams(salt) * (salt.isChalk() ? model.chalkDissolved().value() : 1);
    }

    /** The proton balance at the central values: one term a component. */
    public ProtonBalance balance() {
        MashEquation equation = MashEquation.of(this);
        return equation.balance(equation.centre());
    }

    /** The malts' terms alone, with the lactic acid of an acidulated malt. */
    public ProtonBalance maltBalance() {
        return PhFunction.of(this).maltBalance();
    }

    /** All terms but the malts': liquor, hardness, acids, salts and bases. */
    public ProtonBalance otherBalance() {
        return PhFunction.of(this).otherBalance();
    }

    /** The predicted pH of the cooled sample, without its uncertainty: see {@link MashPrediction}. */
    public double ph() {
        return balance().solve();
    }
}
