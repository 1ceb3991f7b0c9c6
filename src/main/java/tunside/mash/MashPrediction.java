package tunside.mash;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import tunside.chemistry.Ion;
import tunside.chemistry.ProtonBalance;
import tunside.quantity.Interval90;

/**
 * Where a mash lands, how sure that is, and why.
 *
 * @param ph of the sample cooled to 20 to 26 degC
 * @param standardUncertainty of the pH
 * @param contributions protons of each component at that pH; they sum to zero
 * @param influences of each uncertain input, most important first
 * @param bufferingMeqPerPh of the whole mash at that pH
 * @param residualAlkalinityMeqPerL of the liquor as it is (KOLBACH-1953)
 * @param treatedResidualAlkalinityMeqPerL of the liquor with salts, bases and acids in it, at that pH
 * @param titration acid or base needed to other pH
 * @param ions of liquor and additions in the mash; what the malt gives is not known and not in it
 */
public record MashPrediction(
        double ph,
        double standardUncertainty,
        List<Contribution> contributions,
        List<Influence> influences,
        double bufferingMeqPerPh,
        double residualAlkalinityMeqPerL,
        double treatedResidualAlkalinityMeqPerL,
        List<TitrationPoint> titration,
        List<DissolvedAmount> ions) {
    private static final double LOWEST_PH = 4;
    private static final double HIGHEST_PH = 7.5;
    private static final int LOWEST_TITRATION_TENTHS = 48;
    private static final int HIGHEST_TITRATION_TENTHS = 64;

    public MashPrediction {
        contributions = List.copyOf(contributions);
        influences = List.copyOf(influences);
        titration = List.copyOf(titration);
        ions = List.copyOf(ions);
    }

    /**
     * Protons of one component at the predicted pH.
     *
     * @param kind in words: malt, liquor, calcium, magnesium, acid, salt
     * @param subject its name; empty for the liquor and its hardness
     * @param meq taken up; negative where it gives
     */
    public record Contribution(String kind, String subject, double meq) {}

    /**
     * What one input does to the prediction.
     *
     * @param input which
     * @param phPerUnit change of the predicted pH per unit of the input
     * @param phPerUncertainty change by one standard uncertainty of the input
     * @param varianceShare of the prediction's variance; all sum to 1. Below 0 only where inputs that were learned together
     *     cancel each other
     */
    public record Influence(UncertainInput input, double phPerUnit, double phPerUncertainty, double varianceShare) {}

    /**
     * Acid needed to bring the mash to a pH.
     *
     * @param ph to reach
     * @param acidMeq negative: base
     */
    public record TitrationPoint(double ph, double acidMeq) {}

    /**
     * Solves the balance and carries every uncertainty through the implicit solution: at the root of {@code F(theta, p)}
     * an input changes the pH by {@code dp/dtheta = -(dF/dtheta)/(dF/dp)} (GUM-2008, first order). Cost: two
     * sums an input, over the components that it is in.
     */
    public static MashPrediction of(Mash mash) {
        MashEquation equation = MashEquation.of(mash);
        double[] centre = equation.centre();
        ProtonBalance balance = equation.balance(centre);
        double ph = balance.solve();
        double buffering = balance.bufferingMeqPerPh(ph);
        double[] phPerUnit = equation.phPerUnit(centre, ph, buffering);
        double[] parts = equation.variances(phPerUnit);
        double variance = Arrays.stream(parts).sum();
        return new MashPrediction(
                ph,
                Math.sqrt(variance),
                contributions(equation, balance, ph),
                influences(equation, phPerUnit, parts, variance),
                buffering,
                residualAlkalinity(mash, mash.liquor().alkalinityMeqPerL(), 0, 0),
                treatedResidualAlkalinity(mash, ph),
                titration(balance),
                MashIons.of(mash, ph));
    }

    /** Whether the pH lies where malts were ever titrated, 4 to 7.5; beyond it a number would mean nothing. */
    public boolean isWithinReach() {
        return isWithinReach(ph);
    }

    /** The same of any pH that the model let expect. */
    public static boolean isWithinReach(double ph) {
        return ph >= LOWEST_PH && ph <= HIGHEST_PH;
    }

    /** The pH within that reach which lies closest to one. */
    public static double nearestWithinReach(double ph) {
        return Math.max(LOWEST_PH, Math.min(HIGHEST_PH, ph));
    }

    /** Lower end of the 90 % interval. */
    public double low90() {
        return ph - Interval90.HALF_WIDTH * standardUncertainty;
    }

    /** Upper end of the 90 % interval. */
    public double high90() {
        return ph + Interval90.HALF_WIDTH * standardUncertainty;
    }

    private static List<Contribution> contributions(MashEquation equation, ProtonBalance balance, double ph) {
        List<Contribution> contributions = new ArrayList<>();
        for (int i = 0; i < equation.components().size(); i++) {
            MashComponent component = equation.components().get(i);
            contributions.add(new Contribution(
                    component.kind().word(),
                    component.subject(),
                    balance.terms().get(i).uptakeMeq(ph)));
        }
        return contributions;
    }

    private static List<Influence> influences(
            MashEquation equation, double[] phPerUnit, double[] parts, double variance) {
        List<Influence> influences = new ArrayList<>();
        for (int i = 0; i < parts.length; i++) {
            UncertainInput input = equation.inputs().get(i);
            if (input.standardUncertainty() > 0) {
                influences.add(new Influence(
                        input,
                        phPerUnit[i],
                        phPerUnit[i] * input.standardUncertainty(),
                        variance == 0 ? 0 : parts[i] / variance));
            }
        }
        influences.sort(Comparator.comparingDouble(Influence::varianceShare).reversed());
        return influences;
    }

    private static double residualAlkalinity(
            Mash mash, double alkalinityMeqPerL, double moreCalciumMeqPerL, double moreMagnesiumMeqPerL) {
        return alkalinityMeqPerL
                - (mash.liquor().calciumMeqPerL() + moreCalciumMeqPerL)
                        / mash.model().calciumDivisor().value()
                - (mash.liquor().magnesiumMeqPerL() + moreMagnesiumMeqPerL)
                        / mash.model().magnesiumDivisor().value();
    }

    private static double treatedResidualAlkalinity(Mash mash, double ph) {
        double litres = mash.liquor().volume().litres();
        double alkalinity = mash.liquor().alkalinityMeqPerL();
        double calcium = 0;
        double magnesium = 0;
        for (Addition addition : mash.additions()) {
            if (addition instanceof AcidAddition acid) {
                alkalinity += acid.millimoles().value()
                        / litres
                        * acid.acid().system().meanCharge(ph, MashEquation.CONSTANTS_AT);
            } else if (addition instanceof SaltAddition salt) {
                var dissolved = salt.salt().perGram().scaled(1000 * mash.dissolvedGrams(salt) / litres);
                alkalinity += dissolved.fixedCharge();
                calcium += 2 * dissolved.ion(Ion.CALCIUM);
                magnesium += 2 * dissolved.ion(Ion.MAGNESIUM);
            }
        }
        return residualAlkalinity(mash, alkalinity, calcium, magnesium);
    }

    private static List<TitrationPoint> titration(ProtonBalance balance) {
        List<TitrationPoint> points = new ArrayList<>();
        for (int tenths = LOWEST_TITRATION_TENTHS; tenths <= HIGHEST_TITRATION_TENTHS; tenths++) {
            points.add(new TitrationPoint(tenths / 10.0, balance.uptakeMeq(tenths / 10.0)));
        }
        return points;
    }
}
