package tunside.mash.plan;

import java.util.List;
import tunside.chemistry.ProtonBalance;
import tunside.mash.Liquor;
import tunside.mash.Mash;

/**
 * The proton balance of a mash and of everything that may go into it, tabulated against pH: one sum per addition instead of
 * a new mash. At a fixed pH the balance is linear in acids, salts, bases and the blend; acidulated malt also thickens the
 * mash, which a parabola through three masses takes up.
 *
 * <p>Nodes every 0.05 from pH 4 to 7.5, cubic between them: the pH of a plan agrees with the full solution to 2e-5.
 */
final class ProtonTable {
    private static final double LOWEST = 4;
    private static final int NODES = 71;
    private static final double SPACING = 0.05;
    private static final int PH_ITERATIONS = 50;
    /** Amount per litre of liquor at which a supply's protons are taken: 0.1 mL, or 0.1 g. */
    private static final double PROBE_PER_L = 0.1;

    private final double[] base = new double[NODES];
    private final double[][] linear;
    private final double[][] square;

    private ProtonTable(int supplies) {
        linear = new double[supplies][NODES];
        square = new double[supplies][NODES];
    }

    static ProtonTable of(PlanQuestion question) {
        Mash mash = question.mash();
        List<PlanSupply> supplies = question.supplies();
        ProtonTable table = new ProtonTable(supplies.size());
        double[] malts = column(mash.maltBalance());
        double[] others = column(mash.otherBalance());
        for (int node = 0; node < NODES; node++) {
            table.base[node] = malts[node] + others[node];
        }
        for (int i = 0; i < supplies.size(); i++) {
            if (supplies.get(i) instanceof PlanSupply.OfMalt malt) {
                table.malt(i, question, malt, malts);
            } else {
                table.line(i, question, others);
            }
        }
        return table;
    }

    private static double[] column(ProtonBalance balance) {
        double[] column = new double[NODES];
        for (int node = 0; node < NODES; node++) {
            column[node] = balance.uptakeMeq(LOWEST + node * SPACING);
        }
        return column;
    }

    private void line(int index, PlanQuestion question, double[] others) {
        Mash mash = question.mash();
        double litres = mash.liquor().volume().litres();
        PlanSupply supply = question.supplies().get(index);
        double probe = supply instanceof PlanSupply.OfWater ? litres : PROBE_PER_L * litres;
        Mash with = mash.withAdditions(List.of());
        if (supply instanceof PlanSupply.OfAcid acid) {
            with = with.plus(acid.addition(probe));
        } else if (supply instanceof PlanSupply.OfSalt salt) {
            with = with.plus(salt.addition(probe));
        } else if (supply instanceof PlanSupply.OfWater water) {
            with = new Mash(
                    mash.grist(),
                    Liquor.of(mash.liquor().volume(), water.water()),
                    List.of(),
                    mash.conditions(),
                    mash.model());
        }
        double[] before = mash.additions().isEmpty()
                ? others
                : column(mash.withAdditions(List.of()).otherBalance());
        double[] after = column(with.otherBalance());
        for (int node = 0; node < NODES; node++) {
            linear[index][node] = (after[node] - before[node]) / probe;
        }
    }

    private void malt(int index, PlanQuestion question, PlanSupply.OfMalt malt, double[] malts) {
        double full = Math.max(malt.most(), 0.01 * question.mash().grist().kilograms());
        double[] amounts = new double[question.supplies().size()];
        amounts[index] = full / 2;
        double[] atHalf = column(question.with(amounts).maltBalance());
        amounts[index] = full;
        double[] atFull = column(question.with(amounts).maltBalance());
        for (int node = 0; node < NODES; node++) {
            double half = (atHalf[node] - malts[node]) / (full / 2);
            double whole = (atFull[node] - malts[node]) / full;
            square[index][node] = (whole - half) / (full / 2);
            linear[index][node] = 2 * half - whole;
        }
    }

    /** Protons taken up at a node, mEq. */
    private double uptake(int node, double[] amounts) {
        double sum = base[node];
        for (int i = 0; i < amounts.length; i++) {
            if (amounts[i] != 0) {
                sum += amounts[i] * (linear[i][node] + amounts[i] * square[i][node]);
            }
        }
        return sum;
    }

    /** Protons that the mash alone takes up at a pH, mEq. */
    double baseMeq(double ph) {
        return interpolated(base, ph);
    }

    /** Protons that a plan's mash takes up at a pH, mEq. */
    double meq(double[] amounts, double ph) {
        double sum = baseMeq(ph);
        for (int i = 0; i < amounts.length; i++) {
            sum += amounts[i] * meqPerUnit(i, amounts[i], ph);
        }
        return sum;
    }

    /** Protons that a measure of a supply takes up at a pH, mEq, on the chord up to {@code amount}. */
    double meqPerUnit(int supply, double amount, double ph) {
        return interpolated(linear[supply], ph) + amount * interpolated(square[supply], ph);
    }

    /** Protons that lower the mash's pH by one unit, mEq per pH, above 0. */
    double baseBuffering(double ph) {
        return (baseMeq(ph - SPACING / 2) - baseMeq(ph + SPACING / 2)) / SPACING;
    }

    /** The pH of a plan; beyond the table its last slope goes on. */
    double ph(double[] amounts) {
        int low = 0;
        int high = NODES - 1;
        double atLow = uptake(low, amounts);
        double atHigh = uptake(high, amounts);
        if (atLow <= 0) {
            return LOWEST + SPACING * atLow / (atLow - uptake(1, amounts));
        }
        if (atHigh >= 0) {
            return LOWEST + (NODES - 1) * SPACING + SPACING * atHigh / (uptake(NODES - 2, amounts) - atHigh);
        }
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (uptake(middle, amounts) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        int first = first(low);
        double[] around = new double[4];
        for (int k = 0; k < 4; k++) {
            around[k] = uptake(first + k, amounts);
        }
        double left = low - first;
        double right = left + 1;
        for (int i = 0; i < PH_ITERATIONS && right - left > 1e-9; i++) {
            double middle = (left + right) / 2;
            if (cubic(around, middle) > 0) {
                left = middle;
            } else {
                right = middle;
            }
        }
        return LOWEST + (first + (left + right) / 2) * SPACING;
    }

    private static double interpolated(double[] column, double ph) {
        double place = (ph - LOWEST) / SPACING;
        int first = first((int) Math.floor(place));
        double[] around = {column[first], column[first + 1], column[first + 2], column[first + 3]};
        return cubic(around, place - first);
    }

    /** First of the four nodes around an interval. */
    private static int first(int interval) {
        return Math.max(0, Math.min(NODES - 4, interval - 1));
    }

    /** The cubic through values at 0, 1, 2 and 3. */
    private static double cubic(double[] y, double t) {
        double a = t - 1;
        double b = t - 2;
        double c = t - 3;
        return -y[0] * a * b * c / 6 + y[1] * t * b * c / 2 - y[2] * t * a * c / 2 + y[3] * t * a * b / 6;
    }
}
