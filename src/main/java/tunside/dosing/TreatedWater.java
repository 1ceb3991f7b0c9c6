package tunside.dosing;

import java.util.OptionalDouble;
import tunside.chemistry.Acid;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;
import tunside.water.Water;

/**
 * Strike or sparge liquor in a closed vessel: electroneutrality with activities and complexes. What is not known is the
 * alkalinity, by a factor.
 *
 * @param water composition
 * @param volume of it
 * @param temperature at which it is dosed and measured, 0 to 100 degC
 * @param acid that is added
 * @param logSd standard deviation of the logarithm of the alkalinity
 */
public record TreatedWater(Water water, Volume volume, Temperature temperature, Acid acid, double logSd)
        implements Titratable {
    /** How far a reported alkalinity is commonly off (COMMON-PRACTICE). */
    public static final double ALKALINITY_LOG_SD = 0.05;

    @Override
    public double after(double scale, double ph, double millimolesBefore, double millimoles) {
        Solution before = scaled(scale).plus(acid.perMole().scaled(perKilogram(millimolesBefore)));
        double anchor = ChargeBalance.at(before, temperature, ph).netCharge();
        Solution anchored = before.withBase(before.base() - anchor);
        Solution after = anchored.plus(acid.perMole().scaled(perKilogram(millimoles)));
        return ChargeBalance.solve(after, temperature).ph();
    }

    /** Acid for the central alkalinity, mmol in the whole volume; empty where the target lies on the wrong side. */
    public OptionalDouble millimolesTo(double targetPh) {
        OptionalDouble perKilogram = ChargeBalance.dose(water.solution(), acid.perMole(), targetPh, temperature, 1);
        return perKilogram.isPresent()
                ? OptionalDouble.of(perKilogram.getAsDouble() * 1000 * volume.litres())
                : OptionalDouble.empty();
    }

    /** The pH after acid and after the carbon dioxide has escaped to that of the air. */
    public double openPhAfter(double millimoles) {
        Solution dosed = water.solution().plus(acid.perMole().scaled(perKilogram(millimoles)));
        return ChargeBalance.solve(
                        CarbonateState.open(dosed, temperature, CarbonateState.AIR_PARTIAL_PRESSURE_ATM), temperature)
                .ph();
    }

    private Solution scaled(double scale) {
        Solution solution = water.solution();
        double extra = (scale - 1) * solution.fixedCharge();
        return solution.withBase(solution.base() + extra).withCarbon(solution.carbon() * scale);
    }

    private double perKilogram(double millimoles) {
        return millimoles / 1000 / volume.litres();
    }
}
