package tunside.dosing;

import java.util.OptionalDouble;
import tunside.chemistry.Acid;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.ChargeCurve;
import tunside.chemistry.Ion;
import tunside.chemistry.Salt;
import tunside.chemistry.Solution;
import tunside.mash.AcidAddition;
import tunside.mash.Estimate;
import tunside.mash.MashModel;
import tunside.quantity.Mass;
import tunside.quantity.Temperature;

/**
 * What is added to move a pH.
 *
 * @param id of the acid or salt
 * @param name in words
 * @param acid whether it lowers the pH
 * @param protonsMeqPerGram protons that a gram gives at a pH; negative where it takes them up
 * @param relativeUncertainty standard uncertainty of those: label, measuring, and what acts slowly or dissolves in part
 * @param gramsPerMl density, for what is measured by volume
 */
public record Reagent(
        String id,
        String name,
        boolean acid,
        PhCurve protonsMeqPerGram,
        double relativeUncertainty,
        OptionalDouble gramsPerMl) {
    /** What stands for an addition where there was none. */
    static final Reagent NOTHING = new Reagent("nothing", "nothing", true, ph -> 0, 0, OptionalDouble.empty());

    private static final Temperature CONSTANTS_AT = new Temperature(25);
    private static final ChargeCurve CARBONIC = Acids.CARBONIC.at(CONSTANTS_AT);

    /** An acid in mash, wort or beer: constants of 25 degC without activities, as the mash model was fitted. */
    public static Reagent of(AcidProduct product) {
        Acid acid = product.acid();
        double millimoles = millimolesPerGram(product).value();
        ChargeCurve charge = acid.system().at(CONSTANTS_AT);
        return of(product, tabulated(ph -> -millimoles * charge.meanCharge(ph)));
    }

    /** The same product with another function of protons against pH, mEq/g. */
    static Reagent of(AcidProduct product, PhCurve protonsMeqPerGram) {
        Estimate perGram = millimolesPerGram(product);
        double amount = MashModel.standard().handling().acidAmountRelative();
        double slow = perGram.standardUncertainty() / perGram.value();
        double density = product.solid() ? 0 : product.densityUncertaintyGPerMl() / product.densityGPerMl();
        return new Reagent(
                product.acid().id(),
                product.acid().name(),
                true,
                protonsMeqPerGram,
                Math.sqrt(amount * amount + slow * slow + density * density),
                product.solid() ? OptionalDouble.empty() : OptionalDouble.of(product.densityGPerMl()));
    }

    /** Acid that acts, mmol per gram of product: of lactic oligomers half, as in {@link AcidAddition}. */
    static Estimate millimolesPerGram(AcidProduct product) {
        return AcidAddition.of(product, new Mass(0.001)).millimoles();
    }

    /** Acid of a product that acts while the liquid stands, mmol per gram. */
    public static double actingMillimolesPerGram(AcidProduct product) {
        return millimolesPerGram(product).value();
    }

    /**
     * A base in mash, wort or beer.
     *
     * @param hardnessCounts whether its calcium gives protons back, as in a mash
     */
    public static Reagent of(Salt salt, boolean hardnessCounts) {
        MashModel model = MashModel.standard();
        Solution perGram = salt.perGram();
        boolean chalk = Bases.isChalk(salt);
        double acting = chalk ? model.chalkDissolved().value() : 1;
        double givenBack = hardnessCounts
                ? 2 * perGram.ion(Ion.CALCIUM) / model.calciumDivisor().value()
                        + 2
                                * perGram.ion(Ion.MAGNESIUM)
                                / model.magnesiumDivisor().value()
                : 0;
        double always = perGram.fixedCharge() - givenBack;
        return of(salt, tabulated(ph -> -1000 * acting * (always + perGram.carbon() * CARBONIC.meanCharge(ph))));
    }

    /** The same base with another function of protons against pH, mEq/g. */
    static Reagent of(Salt salt, PhCurve protonsMeqPerGram) {
        MashModel model = MashModel.standard();
        double dissolving = Bases.isChalk(salt)
                ? model.chalkDissolved().standardUncertainty()
                        / model.chalkDissolved().value()
                : 0;
        return new Reagent(
                salt.id(),
                salt.name(),
                false,
                protonsMeqPerGram,
                Math.hypot(model.handling().saltMassRelative(), dissolving),
                OptionalDouble.empty());
    }

    private static PhCurve tabulated(PhCurve curve) {
        return new TabulatedCurve(curve, TitrationCurve.LOWEST_PH, TitrationCurve.HIGHEST_PH);
    }

    /** Protons of a gram at a pH, mEq. */
    double meqPerGram(double ph) {
        return protonsMeqPerGram.at(ph);
    }

    /** The same where its uncertainty is carried by the buffering instead: see {@link BufferingPrior#widened}. */
    Reagent withoutUncertainty() {
        return new Reagent(id, name, acid, protonsMeqPerGram, 0, gramsPerMl);
    }

    /** Volume of a mass, mL; absent for what is weighed. */
    public OptionalDouble millilitres(double grams) {
        return gramsPerMl.isPresent() ? OptionalDouble.of(grams / gramsPerMl.getAsDouble()) : OptionalDouble.empty();
    }
}
