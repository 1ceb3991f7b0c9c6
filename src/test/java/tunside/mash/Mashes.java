package tunside.mash;

import java.util.List;
import java.util.Map;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Salt;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/** Mashes that several tests use. */
final class Mashes {
    private Mashes() {}

    static GristPart part(Malt malt, double kilograms) {
        return new GristPart(malt, new Mass(kilograms));
    }

    static Malt measured(String classId, double ph, double buffering) {
        return Malt.of(classId).with(MeasuredMalt.of(new Estimate(ph, 0.04), BufferCurve.linear(buffering, 0.1)));
    }

    static AcidAddition acid(String id, double millimoles) {
        return new AcidAddition(Acids.get(id), Estimate.exactly(millimoles));
    }

    /** 5 kg of pale malt in 20 L of distilled water. */
    static Mash pale() {
        return Mash.of(new Grist(List.of(part(Malt.of("pale"), 5))), Liquor.distilled(new Volume(20)));
    }

    /** Four malts in hard water with lactic acid, all known by class. */
    static Mash porter() {
        return Mash.of(
                new Grist(List.of(
                        part(Malt.of("pale"), 4),
                        part(Malt.of("munich"), 0.6),
                        part(Malt.of("caramel", 120), 0.4),
                        part(Malt.of("roasted", 1000), 0.3))),
                Liquor.titrated(new Volume(16), 3.2, 4.5, 7.6, 4.5, 0.9),
                acid("lactic", 12));
    }

    static final Salt CHALK =
            new Salt("chalk", "chalk", "CaCO3", 100.086, Map.of(Ion.CALCIUM, 1.0), 1, "hardly", "IUPAC-WEIGHTS");
    static final Salt BICARBONATE = new Salt(
            "bicarbonate", "bicarbonate", "NaHCO3", 84.006, Map.of(Ion.SODIUM, 1.0), 1, "well", "IUPAC-WEIGHTS");
    static final Salt GYPSUM = new Salt(
            "gypsum",
            "gypsum",
            "CaSO4.2H2O",
            172.164,
            Map.of(Ion.CALCIUM, 1.0, Ion.SULFATE, 1.0),
            0,
            "little",
            "IUPAC-WEIGHTS");
    static final Salt EPSOM = new Salt(
            "epsom",
            "epsom",
            "MgSO4.7H2O",
            246.466,
            Map.of(Ion.MAGNESIUM, 1.0, Ion.SULFATE, 1.0),
            0,
            "well",
            "IUPAC-WEIGHTS");

    static SaltAddition salt(Salt salt, double grams) {
        return new SaltAddition(salt, new Mass(grams / 1000));
    }

    /** Dark malts and acidulated malt with chalk and bicarbonate against them. */
    static Mash chalky() {
        return Mash.of(
                new Grist(List.of(
                        part(measured("pilsner", 5.74, 40), 3),
                        part(Malt.of("rye"), 0.5),
                        part(Malt.of("acidulated"), 0.1),
                        part(Malt.of("roasted"), 0.5))),
                Liquor.titrated(new Volume(12), 1, 4.3, 7.8, 2, 0.5),
                salt(CHALK, 4),
                salt(BICARBONATE, 2));
    }
}
