package tunside.chemistry;

/**
 * What the forms of all reacting acids, the free metals and the ions of water sum up to at a point: each metal, charge and
 * squared charge; and how these sums grow with the logarithms of the activities. The forms of one acid share a constant total,
 * so their part in the growth is a covariance; what stands alone adds its plain product.
 */
final class SpeciesSums {
    /** Places of the sums: the metals of {@link Species#METALS} first, then charge and squared charge. */
    static final int CHARGE = Species.METALS.size();

    static final int SQUARES = CHARGE + 1;
    static final int COUNT = SQUARES + 1;

    private static final int UNCHARGED = -AcidSystem.LOWEST_CHARGE; // its place in the powers
    private static final int OF_METAL = 2; // charge of a free metal, the highest of all

    private final Species species;
    private final double waterIonProduct;
    /** Henry's fixed CO2(aq) in open vessels, mol/kg; negative in closed ones. */
    private final double openCarbonDioxide;

    private final double[] powers = new double[UNCHARGED + OF_METAL + 1]; // aH^z gamma^(-z^2)
    private final double[] classFactors = {1, 0, 0}; // of a class of forms: aM / aH^2 of the metal that holds them
    private final double[][] classMoments = new double[Species.CLASSES][3]; // of one acid, in the charge
    private final double[] sums = new double[COUNT];
    private final double[][] products = new double[COUNT][COUNT];

    SpeciesSums(Species species, double waterIonProduct, double openCarbonDioxide) {
        this.species = species;
        this.waterIonProduct = waterIonProduct;
        this.openCarbonDioxide = openCarbonDioxide;
    }

    /** Of the same species, at a point of its own. */
    SpeciesSums(SpeciesSums other) {
        this(other.species, other.waterIonProduct, other.openCarbonDioxide);
    }

    /** A sum at the last point, mol/kg. */
    double sum(int place) {
        return sums[place];
    }

    /** How a sum grows with the logarithms of the others, at the last point, mol/kg. */
    double[] products(int place) {
        return products[place];
    }

    /** A metal that no acid holds, mol/kg. */
    double freeMetal(int metal) {
        return classFactors[metal + 1] * powers[UNCHARGED + OF_METAL];
    }

    /** Activity coefficient of an ion of so many charges at the last point. */
    double gamma(int charges) {
        return Math.pow(powers[UNCHARGED + 1] * powers[UNCHARGED - 1], -0.5 * charges * charges);
    }

    /** Share of CO2(aq), HCO3- or CO3-- in all inorganic carbon at the last point; only with carbon. */
    double carbonShare(int protonsLost) {
        double sum = 0;
        for (int form = species.begin(0, 0); form < species.end(0, 0); form++) {
            sum += weight(form);
        }
        return weight(species.begin(0, 0) + protonsLost) / sum;
    }

    private double weight(int form) {
        return species.factor(form) * powers[UNCHARGED + species.charge(form)];
    }

    /** Sets the activity of a metal over the square of that of the hydrogen ion, for the next evaluation. */
    void setMetal(int metal, double factor) {
        classFactors[metal + 1] = factor;
    }

    /**
     * Sums up.
     *
     * @param hydrogen activity of the hydrogen ion
     * @param gamma activity coefficient of a singly charged ion
     * @param added how much of the addition
     */
    void evaluate(double hydrogen, double gamma, double added) {
        setPowers(hydrogen, gamma);
        startWithWaterAndMetals();
        for (int acid = 0; acid < species.acids(); acid++) {
            addAcid(acid, added);
        }
        for (int a = 1; a < COUNT; a++) {
            for (int b = 0; b < a; b++) {
                products[a][b] = products[b][a];
            }
        }
    }

    private void setPowers(double hydrogen, double gamma) {
        double perHydrogen = 1 / hydrogen;
        double perGamma = 1 / gamma;
        double up = 1;
        double down = 1;
        double ratio = perGamma; // of gamma^(-z^2) to that of the charge before
        powers[UNCHARGED] = 1;
        for (int z = 1; z <= UNCHARGED; z++) {
            down *= perHydrogen * ratio;
            powers[UNCHARGED - z] = down;
            if (z <= OF_METAL) {
                up *= hydrogen * ratio;
                powers[UNCHARGED + z] = up;
            }
            ratio *= perGamma * perGamma;
        }
    }

    private void startWithWaterAndMetals() {
        double hydrogen = powers[UNCHARGED + 1];
        double hydroxide = waterIonProduct * powers[UNCHARGED - 1];
        double metals = 0;
        for (int m = 0; m < CHARGE; m++) {
            double free = freeMetal(m);
            sums[m] = free;
            products[m][m] = free;
            products[m][CHARGE] = OF_METAL * free;
            products[m][SQUARES] = OF_METAL * OF_METAL * free;
            metals += free;
        }
        products[0][1] = 0;
        sums[CHARGE] = hydrogen - hydroxide + OF_METAL * metals;
        sums[SQUARES] = hydrogen + hydroxide + OF_METAL * OF_METAL * metals;
        products[CHARGE][CHARGE] = sums[SQUARES];
        products[CHARGE][SQUARES] = hydrogen - hydroxide + OF_METAL * OF_METAL * OF_METAL * metals;
        products[SQUARES][SQUARES] = hydrogen + hydroxide + OF_METAL * OF_METAL * OF_METAL * OF_METAL * metals;
    }

    private void addAcid(int acid, double added) {
        double m0 = 0;
        double m1 = 0;
        double m2 = 0;
        double m3 = 0;
        double m4 = 0;
        int form = species.begin(acid, 0);
        for (int c = 0; c < Species.CLASSES; c++) {
            double c0 = 0;
            double c1 = 0;
            double c2 = 0;
            for (int end = species.end(acid, c); form < end; form++) {
                int z = species.charge(form);
                double moment = classFactors[c] * weight(form);
                c0 += moment;
                moment *= z;
                c1 += moment;
                moment *= z;
                c2 += moment;
                moment *= z;
                m3 += moment;
                m4 += moment * z;
            }
            m0 += c0;
            m1 += c1;
            m2 += c2;
            classMoments[c][0] = c0;
            classMoments[c][1] = c1;
            classMoments[c][2] = c2;
        }
        boolean open = acid == 0 && openCarbonDioxide >= 0;
        double perTotal = open ? 0 : 1 / m0;
        double scale = open ? openCarbonDioxide : species.total(acid, added) * perTotal;
        sums[CHARGE] += scale * m1;
        sums[SQUARES] += scale * m2;
        products[CHARGE][CHARGE] += scale * (m2 - m1 * m1 * perTotal);
        products[CHARGE][SQUARES] += scale * (m3 - m1 * m2 * perTotal);
        products[SQUARES][SQUARES] += scale * (m4 - m2 * m2 * perTotal);
        if (form > species.end(acid, 0)) {
            addHeld(scale, perTotal, m1, m2);
        }
    }

    /** Adds the metals that an acid holds. */
    private void addHeld(double scale, double perTotal, double m1, double m2) {
        for (int m = 0; m < CHARGE; m++) {
            double[] held = classMoments[m + 1];
            sums[m] += scale * held[0];
            products[m][m] += scale * held[0] * (1 - held[0] * perTotal);
            products[m][CHARGE] += scale * (held[1] - held[0] * m1 * perTotal);
            products[m][SQUARES] += scale * (held[2] - held[0] * m2 * perTotal);
        }
        products[0][1] -= scale * classMoments[1][0] * classMoments[2][0] * perTotal;
    }
}
