package tunside.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import tunside.chemistry.Acids;
import tunside.dosing.PhReading;
import tunside.mash.AcidAddition;
import tunside.mash.Estimate;
import tunside.mash.Experience;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.MaltClasses;
import tunside.mash.Mash;
import tunside.mash.MashModel;
import tunside.mash.PhFunction;
import tunside.mash.UncertainInput;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/**
 * A brewer who does not exist. Biases, buffering and the offsets of malt classes are drawn once from the published spread,
 * those of products when they are first bought; lots, weighing, water and the time of the sample anew for each brew; the
 * meter errs at each reading.
 */
final class VirtualHousehold {
    private static final List<String> CLASSES =
            List.of("pale", "pilsner", "vienna", "munich", "wheat", "caramel", "roasted");

    private final SplittableRandom random;
    private final Map<String, Double> shared = new LinkedHashMap<>();
    private final String base;
    private final double alkalinityMeqPerL;
    private final double calciumMeqPerL;
    private final double magnesiumMeqPerL;
    private final double meter;
    private final Map<String, Double> caramelColours = new LinkedHashMap<>();
    private final boolean writesNames;

    /** @param writesNames whether the record names the products of malt */
    VirtualHousehold(long seed, boolean writesNames) {
        this.writesNames = writesNames;
        random = new SplittableRandom(seed);
        MashModel model = MashModel.standard();
        shared.put("model-bias", draw(model.bias()));
        shared.put("malt-types-bias", draw(model.biasOfMaltTypes()));
        shared.put("buffering-scale", Math.exp(model.bufferingScale().standardUncertainty() * random.nextGaussian()));
        for (String id : CLASSES) {
            shared.put("malt-offset " + id, model.classOffsetUncertainty(MaltClasses.get(id)) * random.nextGaussian());
        }
        base = random.nextBoolean() ? "pale" : "pilsner";
        alkalinityMeqPerL = between(0, 4);
        calciumMeqPerL = between(0.5, 6);
        magnesiumMeqPerL = between(0.2, 1.5);
        meter = between(0.02, 0.05);
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private double draw(Estimate estimate) {
        return estimate.value() + estimate.standardUncertainty() * random.nextGaussian();
    }

    /**
     * A brew with what is true of it.
     *
     * @param brew as written down
     * @param truePh of the first sample
     */
    record Brew(MeasuredBrew brew, double truePh) {}

    /**
     * All brews share the class of the base malt; the rest of the grist, the liquor and the acid differ.
     *
     * @param shop where the malts come from: each has products of its own
     */
    Brew brew(String label, String shop, boolean dosed) {
        List<GristPart> parts = new ArrayList<>();
        parts.add(part(Malt.of(base).named(shop), between(3.5, 6)));
        if (random.nextInt(3) == 0) {
            parts.add(part(Malt.of(CLASSES.get(2 + random.nextInt(3))).named(shop), between(0.3, 1.2)));
        }
        if (random.nextInt(2) == 0) {
            String product = shop + (random.nextBoolean() ? " light" : " dark");
            double colour = caramelColours.computeIfAbsent(product, name -> (double) Math.round(between(30, 350)));
            parts.add(part(Malt.of("caramel", colour).named(product), between(0.1, 0.5)));
        }
        if (random.nextInt(4) == 0) {
            parts.add(part(Malt.of("roasted", 1000).named(shop), between(0.05, 0.3)));
        }
        Grist grist = new Grist(parts);
        double water = between(0.3, 1);
        Mash mash = Mash.of(
                grist,
                Liquor.titrated(
                        new Volume(grist.kilograms() * between(2.5, 4.5)),
                        water * alkalinityMeqPerL,
                        4.4,
                        7.6,
                        water * calciumMeqPerL,
                        water * magnesiumMeqPerL));
        if (random.nextBoolean()) {
            mash = mash.plus(lactic(between(2, 5) * grist.kilograms()));
        }
        double step = between(3, 7) * grist.kilograms();
        return measured(label, mash, dosed ? List.of(lactic(step)) : List.of());
    }

    /** As the brewer writes it down. */
    private Mash written(Mash mash) {
        List<GristPart> parts = mash.grist().parts().stream()
                .map(part -> writesNames
                        ? part
                        : new GristPart(
                                new Malt(
                                        part.malt().maltClass(),
                                        part.malt().colour(),
                                        part.malt().measured(),
                                        Optional.empty(),
                                        Optional.empty()),
                                part.mass()))
                .toList();
        return new Mash(new Grist(parts), mash.liquor(), mash.additions(), mash.conditions(), mash.model());
    }

    private static GristPart part(Malt malt, double kilograms) {
        return new GristPart(malt, new Mass(kilograms));
    }

    private static AcidAddition lactic(double millimoles) {
        return new AcidAddition(Acids.get("lactic"), Estimate.exactly(millimoles));
    }

    private Brew measured(String label, Mash mash, List<AcidAddition> doses) {
        Map<String, Double> drawn = new LinkedHashMap<>();
        double truePh = truePh(mash, drawn);
        PhReading first = reading(truePh);
        List<MeasuredBrew.Dose> read = new ArrayList<>();
        Mash now = mash;
        for (AcidAddition dose : doses) {
            now = now.plus(dose);
            read.add(new MeasuredBrew.Dose(dose, reading(truePh(now, drawn))));
        }
        return new Brew(new MeasuredBrew(label, written(mash), first, read), truePh);
    }

    private PhReading reading(double truePh) {
        return new PhReading(truePh + meter * random.nextGaussian(), meter);
    }

    /** By the full balance, with every input drawn once a brew. */
    private double truePh(Mash mash, Map<String, Double> drawn) {
        List<Malt> malts = mash.grist().parts().stream().map(GristPart::malt).toList();
        PhFunction function = PhFunction.of(
                mash.withModel(MashModel.standard().withExperience(Experience.prior(MashModel.standard(), malts))));
        double[] values = function.centre();
        Map<String, Integer> seen = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i++) {
            UncertainInput input = function.inputs().get(i);
            String name = (input.id() + " " + input.subject()).strip();
            int ordinal = seen.merge(name, 1, Integer::sum);
            if (input.id().equals("product-offset")) {
                shared.computeIfAbsent(name, key -> input.standardUncertainty() * random.nextGaussian());
            }
            Double household = shared.get(name);
            values[i] = household != null
                    ? household
                    : drawn.computeIfAbsent(
                            name + " " + ordinal,
                            key -> draw(new Estimate(input.value(), input.standardUncertainty())));
        }
        return function.ph(values);
    }
}
