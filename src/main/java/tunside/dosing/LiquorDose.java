package tunside.dosing;

import java.util.OptionalDouble;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Salt;
import tunside.chemistry.Solution;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.MashModel;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

/**
 * Strike or sparge liquor that is brought to a pH in a closed vessel: electroneutrality with activities and complexes, so
 * that a dose at the stated alkalinity is that of {@link ChargeBalance#dose}. The alkalinity is known within a factor.
 *
 * @param solution the water at its measured pH; 1 kg of water is taken for 1 L
 * @param volume above 0
 * @param temperature at which the pH is wanted
 * @param startPh of the water in the closed vessel at that temperature
 */
public record LiquorDose(Solution solution, Volume volume, Temperature temperature, double startPh)
        implements DosableLiquid {
    private static final double NEAREST_PH = 0.05;
    private static final double MOST_TIMES_ALKALINITY = 2;
    private static final double MOST_EXTRA_MEQ_PER_L = 2;
    private static final double LARGEST_LOG_DEVIATION = 0.7;

    public LiquorDose {
        if (!(volume.litres() > 0)) {
            throw new IllegalArgumentException(
                    "volume of the liquor (%s L) must be above 0".formatted(volume.litres()));
        }
    }

    /** A water as its report reads. */
    public static LiquorDose of(Solution solution, Volume volume, Temperature temperature) {
        return new LiquorDose(
                solution,
                volume,
                temperature,
                ChargeBalance.solve(solution, temperature).ph());
    }

    /**
     * The same where the pH itself was measured at its temperature: the carbon that gives this pH, none where even none
     * leaves it too low.
     */
    public LiquorDose at(double measuredPh) {
        double carbon = ChargeBalance.dose(solution.withCarbon(0), Solution.ofCarbon(1), measuredPh, temperature, 1)
                .orElse(0);
        return new LiquorDose(solution.withCarbon(carbon), volume, temperature, measuredPh);
    }

    /** True alkalinity, mEq/L. */
    public double alkalinityMeqPerL() {
        return 1000 * solution.fixedCharge();
    }

    @Override
    public double mostMeq() {
        return mostMeq(alkalinityMeqPerL(), volume.litres());
    }

    /** More acid than this no liquor explains: twice its alkalinity, and 2 mEq/L more. */
    static double mostMeq(double alkalinityMeqPerL, double litres) {
        return litres * (MOST_TIMES_ALKALINITY * Math.max(0, alkalinityMeqPerL) + MOST_EXTRA_MEQ_PER_L);
    }

    /** How the water takes up protons: carbonate in proportion to the alkalinity, and the free acid of water itself. */
    @Override
    public TitrationCurve curve() {
        double litres = volume.litres();
        PhCurve free = ph -> 1000 * litres * netCharge(Solution.WATER, ph);
        PhCurve all = ph -> 1000 * litres * netCharge(solution, ph);
        return TitrationCurve.tabulated(ph -> all.at(ph) - free.at(ph), free);
    }

    private double netCharge(Solution of, double ph) {
        return ChargeBalance.at(of, temperature, ph).netCharge();
    }

    /** How sure the alkalinity is: 5 %, more near zero. */
    @Override
    public BufferingPrior prior() {
        MashModel.Handling handling = MashModel.standard().handling();
        double alkalinity = Math.max(1e-3, alkalinityMeqPerL());
        double spread = Math.hypot(handling.alkalinityRelative(), handling.alkalinityFloorMeqPerL() / alkalinity);
        return new BufferingPrior(alkalinity, "mEq/L", Math.min(LARGEST_LOG_DEVIATION, spread), "COMMON-PRACTICE");
    }

    @Override
    public Supply acid(AcidProduct product, double stepGrams, double mostGrams) {
        double millimolesPerGram = Reagent.millimolesPerGram(product).value();
        PhCurve protons = new TabulatedCurve(
                ph -> millimolesPerGram * protonsPerMole(product.acid().perMole(), ph),
                TitrationCurve.LOWEST_PH,
                Math.max(TitrationCurve.LOWEST_PH + NEAREST_PH, startPh - NEAREST_PH));
        double reach = mostMeq() / millimolesPerGram;
        return new Supply(Reagent.of(product, protons), stepGrams, Math.min(mostGrams, reach));
    }

    @Override
    public Supply base(Salt salt, double stepGrams) {
        double molarMass = salt.molarMassGPerMol();
        Solution perMole = salt.perGram().scaled(molarMass);
        double lowest = startPh + NEAREST_PH;
        double end = lowest + NEAREST_PH * stepsReached(perMole, lowest);
        PhCurve protons = end > lowest
                ? new TabulatedCurve(ph -> 1000 / molarMass * protonsPerMole(perMole, ph), lowest, end)
                : ph -> 0;
        double reach = mostMeq() / salt.alkalinityMeqPerGram();
        return new Supply(Reagent.of(salt, ph -> ph > end ? 0 : protons.at(ph)), stepGrams, reach);
    }

    /** Whole steps of {@link #NEAREST_PH} beyond a pH that any amount of a base reaches. */
    private int stepsReached(Solution perMole, double fromPh) {
        int reached = 0;
        int beyond = 1 + (int) ((TitrationCurve.HIGHEST_PH - fromPh) / NEAREST_PH);
        while (beyond - reached > 1) {
            int between = (reached + beyond) / 2;
            if (dose(perMole, fromPh + between * NEAREST_PH).isPresent()) {
                reached = between;
            } else {
                beyond = between;
            }
        }
        return reached;
    }

    private OptionalDouble dose(Solution perMole, double ph) {
        return ChargeBalance.dose(solution, perMole, ph, temperature, 1);
    }

    /** Protons that a mole must have given where the water arrives at a pH, by the amount that this takes. */
    private double protonsPerMole(Solution perMole, double ph) {
        OptionalDouble moles = dose(perMole, ph);
        if (moles.isEmpty() || moles.getAsDouble() <= 0) {
            return 0;
        }
        return (netCharge(solution, ph) - netCharge(solution, startPh)) / moles.getAsDouble();
    }

    /**
     * The water with an acid in it.
     *
     * @param millimoles of acid that acts
     */
    public Solution dosed(AcidProduct product, double millimoles) {
        return solution.plus(product.acid().perMole().scaled(millimoles / 1000 / volume.litres()));
    }

    /** pH that the dosed water takes at 20 degC once its carbon dioxide has escaped to the air. */
    public static double openPh(Solution dosed) {
        Temperature room = new Temperature(20);
        return ChargeBalance.solve(CarbonateState.open(dosed, room, CarbonateState.AIR_PARTIAL_PRESSURE_ATM), room)
                .ph();
    }

    /** That the pH holds in a closed vessel only. */
    public static Finding openFinding(double openPh, double closedPh) {
        return Finding.of("dose.closed", Outcome.NOTE, "/liquor", openPh, closedPh);
    }
}
