package tunside.mash;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import tunside.chemistry.Acid;
import tunside.chemistry.Acids;
import tunside.chemistry.CarbonateConstants;
import tunside.chemistry.ChargeCurve;
import tunside.chemistry.Ion;
import tunside.chemistry.ProtonBalance;
import tunside.chemistry.ProtonTerm;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;

/** A mash as an equation: which inputs there are, how sure each is, and which protons each component takes up. */
final class MashEquation {
    /**
     * Two inputs that err together.
     *
     * @param first index
     * @param second index, not the first
     * @param value in their units
     */
    record Covariance(int first, int second, double value) {}

    /**
     * The components that an input is in: they follow each other.
     *
     * @param from the first
     * @param to behind the last
     */
    private record Reach(int from, int to) {}

    /** The parameter set was fitted with constants of 25 degC and without activities; it is used the same way. */
    static final Temperature CONSTANTS_AT = new Temperature(25);

    private static final double WATER_PK = CarbonateConstants.pKWater(CONSTANTS_AT);
    private static final double ACIDITY_PH = 5.7;
    private static final double SMALLEST_CHORD_PH = 0.3;
    private static final ChargeCurve CARBONIC = Acids.CARBONIC.at(CONSTANTS_AT);
    private static final ChargeCurve LACTIC = Acids.get("lactic").system().at(CONSTANTS_AT);
    private static final String NO_SUBJECT = "";

    private final List<UncertainInput> inputs;
    private final List<Covariance> covariances;
    private final List<MashComponent> components;
    private final ToDoubleFunction<double[]> liquorRatio;
    private final boolean[] inLiquorRatio; // by input
    private final Reach[] reaches; // by input
    private final MashComponent.Formula[] formulas;

    private MashEquation(Draft draft) {
        this.inputs = List.copyOf(draft.inputs);
        this.covariances = draft.covariances();
        this.components = List.copyOf(draft.components);
        this.liquorRatio = draft::ratio;
        this.inLiquorRatio = draft.inRatio();
        this.reaches = draft.reaches.toArray(Reach[]::new);
        this.formulas = new MashComponent.Formula[components.size()];
        for (int i = 0; i < formulas.length; i++) {
            formulas[i] = components.get(i).formula();
        }
    }

    static MashEquation of(Mash mash) {
        Draft draft = new Draft(mash);
        draft.collect();
        return new MashEquation(draft);
    }

    /** In a fixed order, independent of each other but for what was learned together. */
    List<UncertainInput> inputs() {
        return inputs;
    }

    /** Functions of the inputs' values and of the pH. */
    List<MashComponent> components() {
        return components;
    }

    /** Central values of all inputs. */
    double[] centre() {
        double[] centre = new double[inputs.size()];
        for (int i = 0; i < centre.length; i++) {
            centre[i] = inputs.get(i).value();
        }
        return centre;
    }

    /** Protons that all components together take up at a pH, mEq, at given values of the inputs. */
    double uptakeMeq(double[] values, double ph) {
        return sum(new Reach(0, formulas.length), point(values), ph);
    }

    /**
     * Change of the pH per unit of each input: central differences over a fiftieth of a standard uncertainty; 0 for an input
     * that is sure. Cost: two sums an input, over the components that it is in.
     *
     * @param ph of the balance at the values
     * @param bufferingMeqPerPh of all components there
     */
    double[] phPerUnit(double[] values, double ph, double bufferingMeqPerPh) {
        double[] slopes = new double[values.length];
        double[] point = point(values);
        double decades = point[values.length];
        for (int i = 0; i < slopes.length; i++) {
            double step = inputs.get(i).standardUncertainty() / 50;
            if (step > 0) {
                double above = partWith(i, values[i] + step, point, ph);
                slopes[i] = (above - partWith(i, values[i] - step, point, ph)) / (2 * step) / bufferingMeqPerPh;
                point[i] = values[i];
                point[values.length] = decades;
            }
        }
        return slopes;
    }

    /** What the components that an input is in take up with another value of it. */
    private double partWith(int input, double value, double[] point, double ph) {
        point[input] = value;
        if (inLiquorRatio[input]) {
            setDecades(point);
        }
        return sum(reaches[input], point, ph);
    }

    private double sum(Reach reach, double[] point, double ph) {
        double sum = 0;
        for (int i = reach.from; i < reach.to; i++) {
            sum += formulas[i].uptakeMeq(point, ph);
        }
        return sum;
    }

    /**
     * What each input brings of a result's variance, in the result's unit squared, to first order; below 0 only where inputs
     * that were learned together cancel each other.
     *
     * @param perUnit change of the result per unit of each input
     */
    double[] variances(double[] perUnit) {
        double[] variances = new double[perUnit.length];
        for (int i = 0; i < variances.length; i++) {
            double deviation = perUnit[i] * inputs.get(i).standardUncertainty();
            variances[i] = deviation * deviation;
        }
        for (Covariance covariance : covariances) {
            double part = perUnit[covariance.first] * perUnit[covariance.second] * covariance.value;
            variances[covariance.first] += part;
            variances[covariance.second] += part;
        }
        return variances;
    }

    /** The balance at given values of the inputs; terms in the order of the components. */
    ProtonBalance balance(double[] values) {
        return balance(values, component -> true);
    }

    /** The balance of some components alone. */
    ProtonBalance balance(double[] values, Predicate<MashComponent> wanted) {
        double[] point = point(values);
        List<ProtonTerm> terms = new ArrayList<>();
        for (MashComponent component : components) {
            if (wanted.test(component)) {
                MashComponent.Formula formula = component.formula();
                terms.add(ph -> formula.uptakeMeq(point, ph));
            }
        }
        return new ProtonBalance(terms);
    }

    /** The values and, behind them, the decades of the liquor ratio, which every malt needs. */
    private double[] point(double[] values) {
        double[] point = Arrays.copyOf(values, values.length + 1);
        setDecades(point);
        return point;
    }

    private void setDecades(double[] point) {
        point[point.length - 1] = Math.log10(liquorRatio.applyAsDouble(point));
    }

    /** Collects inputs and components while a mash is read. */
    private static final class Draft {
        private final Mash mash;
        private final MashModel model;
        private final List<UncertainInput> inputs = new ArrayList<>();
        private final List<MashComponent> components = new ArrayList<>();
        private final List<Reach> reaches = new ArrayList<>(); // of the inputs so far
        private final int volume;
        private final int phi;
        private final int dilution;
        private final int bias;
        private final int biasOfTypes;
        private final int scale;
        private final int crush;
        private final int rest;
        private final int decoction;
        private final int[] masses;
        private final String[] labels;
        private final int[] learnt;

        Draft(Mash mash) {
            this.mash = mash;
            this.model = mash.model();
            MashModel.Handling handling = model.handling();
            double litres = mash.liquor().volume().litres();
            volume =
                    input("liquor-volume", NO_SUBJECT, "L", Estimate.relative(litres, handling.liquorVolumeRelative()));
            phi = input("carbon-dioxide-lost", NO_SUBJECT, "1", model.carbonDioxideLost());
            dilution = input("dilution-per-decade", NO_SUBJECT, "pH", model.dilutionPhPerDecade());
            bias = input("model-bias", NO_SUBJECT, "pH", model.bias());
            biasOfTypes = input("malt-types-bias", NO_SUBJECT, "pH", model.biasOfMaltTypes());
            scale = input("buffering-scale", NO_SUBJECT, "1", model.bufferingScale());
            crush = input("crush", NO_SUBJECT, "1", crushFactor());
            rest = input("rest-time", NO_SUBJECT, "pH", restShift());
            decoction = input("decoction", NO_SUBJECT, "pH", decoctionShift());
            learnt = placesOfLearnt();
            List<GristPart> parts = mash.grist().parts();
            masses = new int[parts.size()];
            labels = new String[parts.size()];
            for (int i = 0; i < masses.length; i++) {
                labels[i] = parts.get(i).malt().label();
                double kilograms = parts.get(i).mass().kilograms();
                masses[i] =
                        input("malt-mass", labels[i], "kg", Estimate.relative(kilograms, handling.maltMassRelative()));
            }
        }

        void collect() {
            Reach malts = new Reach(0, masses.length);
            fillReaches(malts);
            for (int i = 0; i < masses.length; i++) {
                malt(masses[i], labels[i], mash.grist().parts().get(i).malt());
                fillReaches(new Reach(i, components.size()));
            }
            liquor();
            fillReaches(new Reach(masses.length, components.size()));
            int before = components.size();
            hardness();
            fillReaches(new Reach(before, components.size()));
            for (Addition addition : mash.additions()) {
                if (addition instanceof AcidAddition acid) {
                    acid(acid);
                    fillReaches(new Reach(components.size() - 1, components.size()));
                }
            }
            Reach all = new Reach(0, components.size());
            reaches.set(volume, all);
            reaches.set(phi, all);
            for (int place : learnt) {
                if (place >= 0) {
                    reaches.set(place, malts);
                }
            }
        }

        /** Of the inputs that have come since. */
        private void fillReaches(Reach reach) {
            while (reaches.size() < inputs.size()) {
                reaches.add(reach);
            }
        }

        /** Input of each parameter of the experience; -1 for an offset of a malt that has none yet. */
        private int[] placesOfLearnt() {
            List<LearntParameter> parameters = model.experience().parameters();
            int[] places = new int[parameters.size()];
            for (int i = 0; i < places.length; i++) {
                places[i] = switch (parameters.get(i).quantity()) {
                    case MODEL_BIAS -> bias;
                    case MALT_TYPES_BIAS -> biasOfTypes;
                    case BUFFERING_SCALE -> scale;
                    case MALT_OFFSET, PRODUCT_OFFSET -> -1;
                };
            }
            return places;
        }

        private List<Covariance> covariances() {
            List<Covariance> covariances = new ArrayList<>();
            for (int i = 0; i < learnt.length; i++) {
                for (int j = 0; j < i; j++) {
                    double value = model.experience().covariance().get(i).get(j);
                    if (learnt[i] >= 0 && learnt[j] >= 0 && value != 0) {
                        covariances.add(new Covariance(
                                learnt[i], learnt[j], value * perLearnt(learnt[i]) * perLearnt(learnt[j])));
                    }
                }
            }
            return covariances;
        }

        /** Change of an input per unit of its parameter: of the buffering scale the logarithm was learned. */
        private double perLearnt(int place) {
            return place == scale ? inputs.get(scale).value() : 1;
        }

        /** The input of a parameter of the experience that belongs to a malt. */
        private int offset(int index) {
            if (learnt[index] < 0) {
                LearntParameter parameter = model.experience().parameters().get(index);
                learnt[index] = input(
                        parameter.quantity().input(),
                        parameter.subject(),
                        "pH",
                        model.experience().estimate(index));
            }
            return learnt[index];
        }

        private int input(String id, String subject, String unit, Estimate estimate) {
            inputs.add(new UncertainInput(id, subject, unit, estimate.value(), estimate.standardUncertainty()));
            return inputs.size() - 1;
        }

        private Estimate crushFactor() {
            return mash.conditions().millGapMm().isPresent()
                    ? new Estimate(
                            MillGaps.bufferingFactor(
                                    mash.conditions().millGapMm().getAsDouble()),
                            model.crushUncertainty())
                    : Estimate.exactly(1);
        }

        private Estimate restShift() {
            return mash.conditions()
                    .rest()
                    .map(time -> model.shiftAfter(time.minutes()))
                    .orElse(new Estimate(0, model.restShift().standardUncertainty()));
        }

        private Estimate decoctionShift() {
            return mash.conditions().decoction() ? model.decoctionShift() : Estimate.exactly(0);
        }

        private double ratio(double[] x) {
            double kilograms = 0;
            for (int mass : masses) {
                kilograms += x[mass];
            }
            return x[volume] / kilograms;
        }

        private boolean[] inRatio() {
            boolean[] inRatio = new boolean[inputs.size()];
            inRatio[volume] = true;
            for (int mass : masses) {
                inRatio[mass] = true;
            }
            return inRatio;
        }

        /** How far a malt's own pH lies from that in distilled water at its reference ratio, given in decades. */
        private double shift(double[] x, double reference, boolean byType) {
            return x[dilution] * (x[x.length - 1] - reference)
                    + x[bias]
                    + x[rest]
                    + x[decoction]
                    + (byType ? x[biasOfTypes] : 0);
        }

        private void malt(int mass, String label, Malt malt) {
            MashComponent.Formula body = body(mass, label, malt);
            if (malt.countedLacticAcidPercent().isEmpty()) {
                components.add(new MashComponent(MashComponent.Kind.MALT, label, body));
                return;
            }
            Acid lactic = Acids.get("lactic");
            int percent = input(
                    "malt-lactic-acid",
                    label,
                    "%",
                    malt.countedLacticAcidPercent().get());
            components.add(new MashComponent(MashComponent.Kind.MALT, label, (x, ph) -> {
                double millimoles = 10000 * x[mass] * x[percent] / lactic.molarMassGPerMol();
                return body.uptakeMeq(x, ph) + millimoles * LACTIC.meanCharge(ph);
            }));
        }

        /** The malt without lactic acid that is counted apart. */
        private MashComponent.Formula body(int mass, String label, Malt malt) {
            MaltClass maltClass =
                    malt.countedLacticAcidPercent().isPresent() ? MaltClasses.get("pilsner") : malt.maltClass();
            MeasuredMalt measured = malt.measured();
            double reference = Math.log10(measured.liquorRatioLPerKg().orElse(maltClass.liquorRatioLPerKg()));
            if (measured.acidityToPh57MeqPerKg().isPresent() && !acidityRestates(measured)) {
                return bodyByAcidity(mass, label, malt, maltClass, reference);
            }
            boolean byType = measured.distilledWaterPh().isEmpty();
            if (byType
                    && maltClass.equals(malt.maltClass())
                    && model.experience().knows(maltClass)) {
                return bodyWithOffset(mass, label, malt, reference);
            }
            int ph = input(
                    "malt-ph",
                    label,
                    "pH",
                    measured.distilledWaterPh().orElseGet(() -> maltClass.distilledWaterPh(malt.colour())));
            Curve curve = curve(label, malt, maltClass);
            return (x, p) -> x[mass] * curve.uptake(x, p - x[ph] - shift(x, reference, byType));
        }

        /** A malt known by a class that was learned about: what class and product share are inputs, what is left another. */
        private MashComponent.Formula bodyWithOffset(int mass, String label, Malt malt, double reference) {
            Estimate whole = malt.maltClass().distilledWaterPh(malt.colour());
            int ofClass = offset(model.experience().indexOf(malt.maltClass()));
            double left = MashModel.square(whole.standardUncertainty())
                    - MashModel.square(model.classOffsetUncertainty(malt.maltClass()));
            int known = model.experience().indexOfProduct(malt);
            int ofProduct = known < 0 ? -1 : offset(known);
            if (known >= 0) {
                left -= MashModel.square(model.productOffsetUncertainty(malt.maltClass()));
            }
            int ph = input("malt-ph", label, "pH", new Estimate(whole.value(), Math.sqrt(left)));
            Curve curve = curve(label, malt, malt.maltClass());
            return (x, p) -> x[mass]
                    * curve.uptake(
                            x, p - x[ph] - x[ofClass] - (ofProduct < 0 ? 0 : x[ofProduct]) - shift(x, reference, true));
        }

        /** Whether distilled-water pH and buffering are both measured, so that an acidity says nothing new. */
        private static boolean acidityRestates(MeasuredMalt measured) {
            return measured.distilledWaterPh().isPresent()
                    && measured.buffering().isPresent();
        }

        /** The titrated acidity holds at pH 5.7; the buffering, measured or that of the class, leads away from there. */
        private MashComponent.Formula bodyByAcidity(
                int mass, String label, Malt malt, MaltClass maltClass, double reference) {
            MeasuredMalt measured = malt.measured();
            int acidity = input(
                    "malt-acidity",
                    label,
                    "mEq/kg",
                    measured.acidityToPh57MeqPerKg().get());
            if (measured.distilledWaterPh().isPresent()
                    && Math.abs(ACIDITY_PH - measured.distilledWaterPh().get().value()) >= SMALLEST_CHORD_PH) {
                int ph = input(
                        "malt-ph", label, "pH", measured.distilledWaterPh().get());
                return (x, p) -> x[mass]
                        * x[crush]
                        * x[acidity]
                        / (ACIDITY_PH - x[ph])
                        * (x[ph] + shift(x, reference, false) - p);
            }
            Curve curve = curve(label, malt, maltClass);
            return (x, p) ->
                    x[mass] * (curve.uptake(x, p - ACIDITY_PH - shift(x, reference, false)) - x[acidity] * x[crush]);
        }

        private Curve curve(String label, Malt malt, MaltClass maltClass) {
            if (malt.measured().buffering().isPresent()) {
                BufferCurve curve = malt.measured().buffering().get();
                int factor = input("malt-buffering", label, "1", new Estimate(1, curve.relativeStandardUncertainty()));
                return (x, d) -> x[crush] * x[factor] * curve.uptakeMeqPerKg(d);
            }
            int buffering = input(
                    "malt-buffering",
                    label,
                    "mEq/(kg pH)",
                    new Estimate(
                            maltClass.buffering().value(), maltClass.buffering().lotUncertainty()));
            return (x, d) -> -x[crush] * x[scale] * x[buffering] * d;
        }

        /** Uptake per kg at a distance from the malt's own pH. */
        @FunctionalInterface
        private interface Curve {
            double uptake(double[] x, double d);
        }

        private double carbonate(double[] x, double ph) {
            return (1 - x[phi]) * CARBONIC.meanCharge(ph);
        }

        private void liquor() {
            Liquor liquor = mash.liquor();
            MashModel.Handling handling = model.handling();
            double alkalinityMeqPerL = liquor.alkalinityMeqPerL();
            int alkalinity = input(
                    "alkalinity",
                    NO_SUBJECT,
                    "mEq/L",
                    new Estimate(
                            alkalinityMeqPerL,
                            Math.hypot(
                                    handling.alkalinityRelative() * alkalinityMeqPerL,
                                    handling.alkalinityFloorMeqPerL())));
            int excess = input(
                    "dissolved-carbon-dioxide",
                    NO_SUBJECT,
                    "mmol/L",
                    new Estimate(
                            liquor.carbonMmolPerL() - alkalinityMeqPerL,
                            liquor.carbonUncertaintyMmolPerL(handling.samplePh())));
            double[] amounts = new double[liquor.solution().acids().size()];
            ChargeCurve[] curves = new ChargeCurve[amounts.length];
            int count = 0;
            for (var acid : liquor.solution().acids().entrySet()) {
                amounts[count] = 1000 * acid.getValue();
                curves[count++] = acid.getKey().at(CONSTANTS_AT);
            }
            components.add(new MashComponent(MashComponent.Kind.LIQUOR, NO_SUBJECT, (x, ph) -> {
                double carbon = Math.max(0, x[alkalinity] + x[excess]);
                double perLitre = x[alkalinity] + carbon * carbonate(x, ph);
                for (int i = 0; i < amounts.length; i++) {
                    perLitre += amounts[i] * curves[i].meanCharge(ph);
                }
                return x[volume] * (perLitre + freeAcid(ph));
            }));
        }

        /**
         * Hydrogen ion less hydroxide beyond pH 4 and pH 10, mEq/L. Between them the malts' own pH holds it already; it is
         * here so that the balance has a root however much acid or base goes in.
         */
        private static double freeAcid(double ph) {
            double inside = Math.max(4, Math.min(10, ph));
            return ph == inside ? 0 : 1000 * (hydrogenLessHydroxide(ph) - hydrogenLessHydroxide(inside));
        }

        private static double hydrogenLessHydroxide(double ph) {
            return Math.pow(10, -ph) - Math.pow(10, ph - WATER_PK);
        }

        /** Calcium and magnesium of liquor and salts, and what the salts bring of carbonate and hydroxide. */
        private void hardness() {
            double relative = model.handling().hardnessRelative();
            int calcium = input(
                    "calcium",
                    NO_SUBJECT,
                    "mEq/L",
                    Estimate.relative(mash.liquor().calciumMeqPerL(), relative));
            int magnesium = input(
                    "magnesium",
                    NO_SUBJECT,
                    "mEq/L",
                    Estimate.relative(mash.liquor().magnesiumMeqPerL(), relative));
            List<SaltInputs> salts = new ArrayList<>();
            for (Addition addition : mash.additions()) {
                if (addition instanceof SaltAddition salt) {
                    salts.add(salt(salt));
                }
            }
            int calciumDivisor = input("calcium-divisor", NO_SUBJECT, "1", model.calciumDivisor());
            int magnesiumDivisor = input("magnesium-divisor", NO_SUBJECT, "1", model.magnesiumDivisor());
            components.add(new MashComponent(MashComponent.Kind.CALCIUM, NO_SUBJECT, (x, ph) -> {
                double meq = x[volume] * x[calcium];
                for (SaltInputs salt : salts) {
                    meq += salt.calciumMeq(x);
                }
                return -meq / x[calciumDivisor];
            }));
            components.add(new MashComponent(MashComponent.Kind.MAGNESIUM, NO_SUBJECT, (x, ph) -> {
                double meq = x[volume] * x[magnesium];
                for (SaltInputs salt : salts) {
                    meq += salt.magnesiumMeq(x);
                }
                return -meq / x[magnesiumDivisor];
            }));
        }

        /** A salt with the inputs that say how much of it dissolves; {@code share} is -1 where all of it does. */
        private record SaltInputs(double calciumMeqPerGram, double magnesiumMeqPerGram, int grams, int share) {
            double calciumMeq(double[] x) {
                return calciumMeqPerGram * dissolvedGrams(x);
            }

            double magnesiumMeq(double[] x) {
                return magnesiumMeqPerGram * dissolvedGrams(x);
            }

            double dissolvedGrams(double[] x) {
                return x[grams] * (share < 0 ? 1 : x[share]);
            }
        }

        private SaltInputs salt(SaltAddition salt) {
            String name = salt.salt().id();
            double grams = mash.actingGrams(salt);
            int share = -1;
            if (salt.isChalk()) {
                share = input("chalk-dissolved", name, "1", model.chalkDissolved());
            }
            int amount = input(
                    "salt-mass",
                    name,
                    "g",
                    Estimate.relative(grams, model.handling().saltMassRelative()));
            Solution perGram = salt.salt().perGram();
            SaltInputs inputsOfSalt =
                    new SaltInputs(2000 * perGram.ion(Ion.CALCIUM), 2000 * perGram.ion(Ion.MAGNESIUM), amount, share);
            double charge = perGram.fixedCharge();
            if (perGram.carbon() > 0 || Math.abs(charge) > 1e-9) {
                components.add(new MashComponent(
                        MashComponent.Kind.SALT,
                        name,
                        (x, ph) -> 1000
                                * inputsOfSalt.dissolvedGrams(x)
                                * (charge + perGram.carbon() * carbonate(x, ph))));
            }
            return inputsOfSalt;
        }

        private void acid(AcidAddition addition) {
            Acid acid = addition.acid();
            double millimoles = addition.millimoles().value();
            double uncertainty = Math.hypot(
                    addition.millimoles().standardUncertainty(),
                    model.handling().acidAmountRelative() * millimoles);
            int amount = input("acid-amount", acid.id(), "mmol", new Estimate(millimoles, uncertainty));
            ChargeCurve curve = acid.system().at(CONSTANTS_AT);
            components.add(
                    new MashComponent(MashComponent.Kind.ACID, acid.id(), (x, ph) -> x[amount] * curve.meanCharge(ph)));
        }
    }
}
