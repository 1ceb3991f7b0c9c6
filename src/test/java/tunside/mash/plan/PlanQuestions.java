package tunside.mash.plan;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.mash.Addition;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MashConditions;
import tunside.mash.MashModel;
import tunside.quantity.Alkalinity;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;
import tunside.water.Water;
import tunside.water.WaterReport;

/** Questions that several tests ask. */
final class PlanQuestions {
    private PlanQuestions() {}

    static Water water(double calcium, double magnesium, double sodium, double chloride, double sulfate, double alk) {
        Map<Ion, Double> ions = new EnumMap<>(Ion.class);
        put(ions, Ion.CALCIUM, calcium);
        put(ions, Ion.MAGNESIUM, magnesium);
        put(ions, Ion.SODIUM, sodium);
        put(ions, Ion.CHLORIDE, chloride);
        put(ions, Ion.SULFATE, sulfate);
        return Water.of(new WaterReport(
                ions,
                Optional.of(new Alkalinity(alk)),
                OptionalDouble.of(4.3),
                OptionalDouble.of(7.6),
                new Temperature(20)));
    }

    private static void put(Map<Ion, Double> ions, Ion ion, double mgPerL) {
        ions.put(ion, mgPerL / ion.molarMassGPerMol());
    }

    static Mash mash(double litres, Water water, GristPart... parts) {
        return new Mash(
                new Grist(List.of(parts)),
                Liquor.of(new Volume(litres), water),
                List.of(),
                MashConditions.UNSTATED,
                MashModel.standard());
    }

    static GristPart part(Malt malt, double kilograms) {
        return new GristPart(malt, new Mass(kilograms));
    }

    static PlanSupply.OfAcid acid(String id, double percent, double step, double most) {
        return new PlanSupply.OfAcid(
                "/atHand/acids/" + id, AcidProduct.of(Acids.get(id), Strength.percent(percent)), step, most);
    }

    static PlanSupply.OfSalt salt(String id, double step, double most) {
        return new PlanSupply.OfSalt("/atHand/salts/" + id, Salts.get(id), step, most);
    }

    static PlanSupply.OfMalt acidulated(double kilograms, double share) {
        return new PlanSupply.OfMalt(
                "/atHand/acidulatedMalt",
                Malt.of("acidulated"),
                0.01,
                PlanSupply.OfMalt.mostKilograms(kilograms, 0, share));
    }

    static PlanSupply.OfWater distilled(double litres, double share) {
        return new PlanSupply.OfWater("/atHand/dilutingWater", Water.distilled(), 0.5, share * litres);
    }

    static IonWant want(Ion ion, double low, double high) {
        return IonWant.of(ion, OptionalDouble.of(low), OptionalDouble.of(high), "/ions/" + ion.symbol());
    }

    /** A question that chance makes: grist pale to black, water soft to alkaline, one to nine supplies, some wants. */
    static PlanQuestion random(SplittableRandom random) {
        double litres = Math.round(random.nextDouble(10, 40));
        Water water = water(
                random.nextDouble(5, 150),
                random.nextDouble(0, 30),
                random.nextDouble(0, 60),
                random.nextDouble(5, 100),
                random.nextDouble(5, 150),
                random.nextDouble(0.1, 6));
        double kilograms = litres / random.nextDouble(2.3, 4.5);
        List<GristPart> parts = new ArrayList<>();
        parts.add(part(Malt.of("pale"), kilograms * random.nextDouble(0.5, 1)));
        if (random.nextBoolean()) {
            parts.add(part(Malt.of("caramel", random.nextInt(20, 300)), kilograms * random.nextDouble(0.02, 0.15)));
        }
        if (random.nextInt(3) == 0) {
            parts.add(part(Malt.of("roasted"), kilograms * random.nextDouble(0.02, 0.12)));
        }
        if (random.nextBoolean()) {
            parts.add(part(Malt.of("munich"), kilograms * random.nextDouble(0.05, 0.4)));
        }
        List<Addition> additions = new ArrayList<>();
        if (random.nextInt(6) == 0) {
            additions.add(acid("lactic", 80, 0.5, 10).addition(random.nextDouble(0.5, 4)));
        }
        Mash mash = new Mash(
                new Grist(parts),
                Liquor.of(new Volume(litres), water),
                additions,
                MashConditions.UNSTATED,
                MashModel.standard());
        List<PlanSupply> supplies = supplies(random, litres, mash.grist().kilograms());
        List<IonWant> wants = new ArrayList<>();
        for (Ion ion : List.of(Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.CHLORIDE, Ion.SULFATE)) {
            if (random.nextInt(3) == 0) {
                double low = random.nextDouble(0, ion == Ion.MAGNESIUM ? 15 : 80);
                wants.add(want(ion, low, low + random.nextDouble(5, 120)));
            }
        }
        if (random.nextInt(5) == 0) {
            double low = random.nextDouble(0.3, 1.5);
            wants.add(IonWant.of(
                    IonWant.Kind.CHLORIDE_TO_SULFATE,
                    OptionalDouble.of(low),
                    OptionalDouble.of(low + 0.4),
                    "/ions/chlorideToSulfate"));
        }
        if (random.nextInt(6) == 0) {
            wants.add(IonWant.of(
                    IonWant.Kind.ALKALINITY,
                    OptionalDouble.empty(),
                    OptionalDouble.of(random.nextDouble(0.5, 3)),
                    "/ions/alkalinity"));
        }
        double target = Math.round(100 * random.nextDouble(5.25, 5.6)) / 100.0;
        double half = random.nextInt(3) == 0 ? 0.05 : 0.1;
        return new PlanQuestion(mash, water, new PhAim(target, target - half, target + half), supplies, wants, 400);
    }

    private static List<PlanSupply> supplies(SplittableRandom random, double litres, double kilograms) {
        List<PlanSupply> supplies = new ArrayList<>();
        double generous = random.nextInt(4) == 0 ? 0.1 : 1;
        for (String[] one : new String[][] {{"lactic", "80"}, {"phosphoric", "10"}, {"hydrochloric", "10"}}) {
            if (random.nextBoolean()) {
                supplies.add(
                        acid(one[0], Double.parseDouble(one[1]), 0.5, generous * litres * random.nextDouble(0.5, 4)));
            }
        }
        if (random.nextInt(3) == 0) {
            supplies.add(acidulated(kilograms, 0.05));
        }
        for (String base : List.of("sodium-bicarbonate", "calcium-hydroxide", "calcium-carbonate")) {
            if (random.nextInt(3) == 0) {
                supplies.add(salt(base, 0.1, generous * litres * random.nextDouble(0.1, 1)));
            }
        }
        for (String salt : List.of("gypsum", "calcium-chloride-dihydrate", "epsom-salt", "sodium-chloride")) {
            if (random.nextBoolean()) {
                supplies.add(salt(salt, 0.1, generous * litres * random.nextDouble(0.2, 1)));
            }
        }
        if (random.nextInt(3) == 0) {
            supplies.add(distilled(litres, random.nextDouble(0.2, 1)));
        }
        if (supplies.isEmpty()) {
            supplies.add(acid("lactic", 80, 0.5, 20));
        }
        return supplies;
    }
}
