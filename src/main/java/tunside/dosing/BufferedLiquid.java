package tunside.dosing;

import java.util.List;
import tunside.chemistry.AcidSystem;
import tunside.chemistry.ProtonBalance;
import tunside.chemistry.ProtonTerm;
import tunside.mash.Mash;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

/**
 * A mash, wort or beer: a proton balance that starts from the measured pH.
 *
 * @param uncertain uptake of the part whose buffering is scaled: the malt, or the whole of a wort or beer
 * @param certain uptake of the rest: liquor, hardness, earlier additions
 * @param acid the acid that is added
 * @param logSd standard deviation of the logarithm of the factor
 */
public record BufferedLiquid(ProtonTerm uncertain, ProtonTerm certain, AcidSystem acid, double logSd)
        implements Titratable {
    /** Spread of the published figures for the buffering of malt in a mash: 90 % from 24 to 60 around 38 (DERIVED). */
    public static final double MASH_LOG_SD = 0.28;

    private static final Temperature SAMPLE = new Temperature(25);

    public BufferedLiquid {
        if (!(logSd >= 0 && logSd <= 2)) {
            throw new IllegalArgumentException("spread of the buffering (%s) must be from 0 to 2".formatted(logSd));
        }
    }

    /** A mash; its grist gives the buffering, the published spread its uncertainty. */
    public static BufferedLiquid mash(Mash mash, AcidSystem acid) {
        ProtonBalance malt = mash.maltBalance();
        ProtonBalance rest = mash.otherBalance();
        return new BufferedLiquid(malt::uptakeMeq, rest::uptakeMeq, acid, MASH_LOG_SD);
    }

    /**
     * A wort or beer with an even buffering.
     *
     * @param volume of it
     * @param bufferingMeqPerLPerPh protons that lower one litre by one pH, above 0
     * @param logSd standard deviation of its logarithm
     */
    public static BufferedLiquid even(Volume volume, double bufferingMeqPerLPerPh, double logSd, AcidSystem acid) {
        if (!(bufferingMeqPerLPerPh > 0 && bufferingMeqPerLPerPh < 1000)) {
            throw new IllegalArgumentException(
                    "buffering (%s mEq/(L pH)) must be above 0 and below 1000".formatted(bufferingMeqPerLPerPh));
        }
        double whole = bufferingMeqPerLPerPh * volume.litres();
        return new BufferedLiquid(ph -> -whole * ph, ph -> 0, acid, logSd);
    }

    @Override
    public double after(double scale, double ph, double millimolesBefore, double millimoles) {
        double anchor = uptake(scale, ph, millimolesBefore);
        ProtonBalance balance = new ProtonBalance(
                List.of(at -> uptake(scale, at, millimolesBefore) - anchor + millimoles * charge(at)));
        return balance.uptakeMeq(0) <= 0 ? 0 : balance.solve();
    }

    private double uptake(double scale, double ph, double millimolesBefore) {
        return scale * uncertain.uptakeMeq(ph) + certain.uptakeMeq(ph) + millimolesBefore * charge(ph);
    }

    private double charge(double ph) {
        return acid.meanCharge(ph, SAMPLE);
    }
}
