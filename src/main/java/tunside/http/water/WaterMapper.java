package tunside.http.water;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.Ion;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.http.quantity.DissolvedQuantity;
import tunside.quantity.Alkalinity;
import tunside.quantity.Conductivity;
import tunside.quantity.DissolvedUnit;
import tunside.quantity.EquivalentUnit;
import tunside.quantity.Temperature;
import tunside.water.AlkalinityTitration;
import tunside.water.CarbonateIons;
import tunside.water.WaterChecks;
import tunside.water.WaterModel;
import tunside.water.WaterReport;

/** Reads a water report. */
final class WaterMapper {
    private static final double MOST_MMOL_PER_L = 200;
    private static final double MOST_MEQ_PER_L = 50;
    private static final double BICARBONATE = 61.016;
    private static final double CARBONATE = 60.008;

    private WaterMapper() {}

    /** Reads it; empty for distilled water and after a fault. */
    static Optional<WaterReport> toReport(@Nullable WaterRequest request, Place place) {
        if (request == null || request.reportsNothing()) {
            return Optional.empty();
        }
        Map<Ion, Double> ions = new EnumMap<>(Ion.class);
        Map<Ion, DissolvedUnit> units = new EnumMap<>(Ion.class);
        put(ions, units, Ion.CALCIUM, request.calcium(), place.member("calcium"));
        put(ions, units, Ion.MAGNESIUM, request.magnesium(), place.member("magnesium"));
        put(ions, units, Ion.SODIUM, request.sodium(), place.member("sodium"));
        put(ions, units, Ion.POTASSIUM, request.potassium(), place.member("potassium"));
        put(ions, units, Ion.CHLORIDE, request.chloride(), place.member("chloride"));
        put(ions, units, Ion.SULFATE, request.sulfate(), place.member("sulfate"));
        put(ions, units, Ion.NITRATE, request.nitrate(), place.member("nitrate"));
        Optional<Alkalinity> stated = alkalinity(request, place);
        Optional<CarbonateIons> carbonates = carbonates(request, place);
        agree(stated, carbonates, place);
        Temperature temperature = request.temperature() == null
                ? new Temperature(20)
                : request.temperature().toTemperature(place.member("temperature"), 0, 60);
        return Optional.ofNullable(place.build(
                () -> new WaterReport(
                        ions,
                        units,
                        stated,
                        alkalinityUnit(request),
                        carbonates,
                        optional(request.alkalinityEndPoint()),
                        optional(request.ph()),
                        temperature,
                        Optional.ofNullable(request.hardness())
                                .map(hardness -> hardness.toHardness(place.member("hardness"), 0, 200)),
                        conductivity(request, place),
                        solids(request, place)),
                null));
    }

    private static Optional<Alkalinity> alkalinity(WaterRequest request, Place place) {
        if (request.alkalinityTitration() == null) {
            return Optional.ofNullable(request.alkalinity())
                    .map(given -> given.toAlkalinity(place.member("alkalinity"), 0, MOST_MEQ_PER_L));
        }
        Place titrated = place.member("alkalinityTitration");
        if (request.alkalinity() != null || request.bicarbonate() != null) {
            titrated.fault("must stand alone, but alkalinity or bicarbonate is given too");
        }
        AlkalinityTitrationRequest titration = request.alkalinityTitration();
        double sample = titration
                .sample()
                .toVolume(titrated.member("sample"), 0.001, 10)
                .millilitres();
        double acid = titration.acid().toVolume(titrated.member("acid"), 0, 10).millilitres();
        double endPoint =
                request.alkalinityEndPoint() == null ? WaterModel.assumedEndPointPh() : request.alkalinityEndPoint();
        Double meqPerL = titrated.build(
                () -> {
                    var done = new AlkalinityTitration(sample, acid, titration.acidEqPerL(), endPoint);
                    return titration.acidToSecondEndPoint() == null
                            ? done.alkalinityMeqPerL()
                            : done.lowAlkalinityMeqPerL(titration
                                    .acidToSecondEndPoint()
                                    .toVolume(titrated.member("acidToSecondEndPoint"), 0, 10)
                                    .millilitres());
                },
                0.0);
        return Optional.of(new Alkalinity(
                titrated.within(meqPerL, 0, MOST_MEQ_PER_L, "mEq/L", () -> Rounded.text(meqPerL) + " mEq/L")));
    }

    private static Optional<CarbonateIons> carbonates(WaterRequest request, Place place) {
        if (request.bicarbonate() == null) {
            if (request.carbonate() != null) {
                place.member("carbonate").fault("needs bicarbonate beside it");
            }
            return Optional.empty();
        }
        double bicarbonate = mmolPerL(request.bicarbonate(), BICARBONATE, 1, place.member("bicarbonate"));
        double carbonate = request.carbonate() == null
                ? 0
                : mmolPerL(request.carbonate(), CARBONATE, 2, place.member("carbonate"));
        return Optional.of(new CarbonateIons(bicarbonate, carbonate));
    }

    /** Two values of one thing: a report that prints both prints the same. */
    private static void agree(Optional<Alkalinity> stated, Optional<CarbonateIons> carbonates, Place place) {
        if (stated.isPresent() && carbonates.isPresent()) {
            double ofIons = carbonates.get().alkalinityMeqPerL();
            if (!WaterChecks.agree(stated.get().meqPerL(), ofIons)) {
                place.member("bicarbonate")
                        .fault("says %s mEq/L with any carbonate, but alkalinity says %s mEq/L; state the one you trust"
                                .formatted(
                                        Rounded.text(Rounded.significant(ofIons, 4)),
                                        Rounded.text(
                                                Rounded.significant(stated.get().meqPerL(), 4))));
            }
        }
    }

    private static Optional<EquivalentUnit> alkalinityUnit(WaterRequest request) {
        if (request.alkalinity() != null) {
            return Optional.of(request.alkalinity().unit());
        }
        return request.bicarbonate() != null && request.bicarbonate().unit() == DissolvedUnit.MG_PER_L
                ? Optional.of(EquivalentUnit.MG_PER_L_AS_HCO3)
                : Optional.empty();
    }

    private static Optional<Conductivity> conductivity(WaterRequest request, Place place) {
        if (request.conductivity() == null) {
            if (request.conductivityTemperature() != null) {
                place.member("conductivityTemperature").fault("belongs to a conductivity");
            }
            return Optional.empty();
        }
        Conductivity given = request.conductivity().toConductivity();
        if (request.conductivityTemperature() == null) {
            return Optional.of(given);
        }
        double celsius = request.conductivityTemperature()
                .toTemperature(place.member("conductivityTemperature"), 20, 25)
                .celsius();
        if (celsius == 25) {
            return Optional.of(given);
        }
        if (celsius != 20) {
            place.member("conductivityTemperature")
                    .fault("must be 20 or 25 degC but is %s degC".formatted(Rounded.text(celsius)));
        }
        return Optional.of(new Conductivity(given.microsiemensPerCm() * WaterModel.conductivityAt20To25()));
    }

    private static OptionalDouble solids(WaterRequest request, Place place) {
        if (request.dissolvedSolids() == null) {
            return OptionalDouble.empty();
        }
        if (request.dissolvedSolids().unit() != DissolvedUnit.MG_PER_L) {
            place.member("dissolvedSolids").member("unit").fault("must be mg/L for dissolved solids");
        }
        return OptionalDouble.of(request.dissolvedSolids().value());
    }

    private static void put(
            Map<Ion, Double> ions,
            Map<Ion, DissolvedUnit> units,
            Ion ion,
            @Nullable DissolvedQuantity quantity,
            Place place) {
        if (quantity == null) {
            return;
        }
        if ((quantity.unit() == DissolvedUnit.MG_PER_L_AS_S && ion != Ion.SULFATE)
                || (quantity.unit() == DissolvedUnit.MG_PER_L_AS_N && ion != Ion.NITRATE)) {
            wrongElement(place);
            return;
        }
        double mmolPerL = quantity.toDissolved().mmolPerL(ion.molarMassGPerMol(), ion.charge());
        ions.put(ion, within(mmolPerL, place));
        units.put(ion, quantity.unit());
    }

    private static double mmolPerL(DissolvedQuantity quantity, double molarMassGPerMol, int charge, Place place) {
        if (quantity.unit() == DissolvedUnit.MG_PER_L_AS_S || quantity.unit() == DissolvedUnit.MG_PER_L_AS_N) {
            wrongElement(place);
            return 0;
        }
        return within(quantity.toDissolved().mmolPerL(molarMassGPerMol, charge), place);
    }

    private static double within(double mmolPerL, Place place) {
        return place.within(mmolPerL, 0, MOST_MMOL_PER_L, "mmol/L", () -> mmolPerL + " mmol/L");
    }

    private static void wrongElement(Place place) {
        place.member("unit")
                .fault("must be mg/L, mmol/L or mEq/L for this ion; mg/L-as-S is for sulfate, mg/L-as-N for nitrate");
    }

    private static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
