package tunside.http.water;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tunside.chemistry.Ion;
import tunside.finding.Finding;
import tunside.http.problem.Place;
import tunside.http.quantity.DissolvedQuantity;
import tunside.quantity.Alkalinity;
import tunside.quantity.DissolvedUnit;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;
import tunside.water.Water;
import tunside.water.WaterPart;
import tunside.water.WaterReport;

/** Reads the {@code liquor} of a request. */
public final class LiquorMapper {
    private static final double SMALLEST_LITRES = 0.01;
    private static final double LARGEST_LITRES = 10_000;

    private LiquorMapper() {}

    /**
     * A liquor as the science takes it.
     *
     * @param volume all of it
     * @param water what it is; its findings point into the request
     */
    public record Liquor(Volume volume, Water water) {}

    /** Reads it; every fault is recorded at its place. */
    public static Liquor toLiquor(LiquorRequest request, Place place) {
        if (request.sources() == null) {
            if (request.volume() == null) {
                place.member("volume").fault("is missing; give volume and water, or sources");
                return new Liquor(new Volume(1), Water.distilled());
            }
            Place waterPlace = place.member("water");
            Water water = toWater(request.water(), waterPlace);
            return new Liquor(
                    request.volume().toVolume(place.member("volume"), SMALLEST_LITRES, LARGEST_LITRES),
                    pointed(water, waterPlace.pointer()));
        }
        if (request.volume() != null || request.water() != null) {
            place.member("sources").fault("must stand alone, but volume or water is given too");
        }
        List<WaterPart> parts = new ArrayList<>();
        for (int i = 0; i < request.sources().size(); i++) {
            Place item = place.member("sources").item(i);
            WaterSourceRequest source = request.sources().get(i);
            parts.add(new WaterPart(
                    source.volume().toVolume(item.member("volume"), SMALLEST_LITRES, LARGEST_LITRES),
                    toWater(source.water(), item.member("water"))));
        }
        double litres =
                parts.stream().mapToDouble(part -> part.volume().litres()).sum();
        return new Liquor(
                new Volume(litres),
                pointed(Water.blend(parts), place.member("sources").pointer()));
    }

    /** Reads one water report; absent: distilled water. */
    public static Water toWater(WaterRequest request, Place place) {
        if (request == null
                || request.equals(new WaterRequest(null, null, null, null, null, null, null, null, null, null, null))) {
            return Water.distilled();
        }
        Map<Ion, Double> ions = new EnumMap<>(Ion.class);
        put(ions, Ion.CALCIUM, request.calcium(), place.member("calcium"));
        put(ions, Ion.MAGNESIUM, request.magnesium(), place.member("magnesium"));
        put(ions, Ion.SODIUM, request.sodium(), place.member("sodium"));
        put(ions, Ion.POTASSIUM, request.potassium(), place.member("potassium"));
        put(ions, Ion.CHLORIDE, request.chloride(), place.member("chloride"));
        put(ions, Ion.SULFATE, request.sulfate(), place.member("sulfate"));
        put(ions, Ion.NITRATE, request.nitrate(), place.member("nitrate"));
        Optional<Alkalinity> alkalinity = Optional.ofNullable(request.alkalinity())
                .map(given -> given.toAlkalinity(place.member("alkalinity"), 0, 50));
        Temperature temperature = request.temperature() == null
                ? new Temperature(20)
                : request.temperature().toTemperature(place.member("temperature"), 0, 60);
        return place.build(
                () -> Water.of(new WaterReport(
                        ions, alkalinity, optional(request.alkalinityEndPoint()), optional(request.ph()), temperature)),
                Water.distilled());
    }

    private static void put(Map<Ion, Double> ions, Ion ion, DissolvedQuantity quantity, Place place) {
        if (quantity == null) {
            return;
        }
        if (quantity.unit() == DissolvedUnit.MG_PER_L_AS_S && ion != Ion.SULFATE
                || quantity.unit() == DissolvedUnit.MG_PER_L_AS_N && ion != Ion.NITRATE) {
            place.member("unit")
                    .fault(
                            "must be mg/L, mmol/L or mEq/L for this ion; mg/L-as-S is for sulfate, mg/L-as-N for nitrate");
            return;
        }
        double mmolPerL = quantity.toDissolved().mmolPerL(ion.molarMassGPerMol(), ion.charge());
        ions.put(ion, place.within(mmolPerL, 0, 200, "mmol/L", mmolPerL + " mmol/L"));
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static Water pointed(Water water, String pointer) {
        List<Finding> findings =
                water.findings().stream().map(finding -> finding.under(pointer)).toList();
        return new Water(water.solution(), water.ph(), water.temperature(), findings);
    }
}
