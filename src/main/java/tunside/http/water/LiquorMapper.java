package tunside.http.water;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.finding.Finding;
import tunside.http.problem.Place;
import tunside.quantity.Volume;
import tunside.water.PreparedLiquor;
import tunside.water.Treatment;
import tunside.water.Water;
import tunside.water.WaterReport;
import tunside.water.WaterSource;

/** Reads the {@code liquor} of a request. */
public final class LiquorMapper {
    private static final double SMALLEST_LITRES = 0.01;
    private static final double LARGEST_LITRES = 10_000;

    private LiquorMapper() {}

    /**
     * A liquor as the science takes it.
     *
     * @param volume all of it
     * @param water what it is, blended and treated; its findings point into the request
     * @param products acids that went into it
     * @param salts salts and bases that went into it
     */
    public record Liquor(Volume volume, Water water, List<AcidProduct> products, List<Salt> salts) {}

    /**
     * A liquor with its history.
     *
     * @param prepared from its sources to what comes out
     * @param waterPlaces where the request has the water of each source
     * @param treatmentsPlace where it has the treatments
     */
    record Reading(PreparedLiquor prepared, List<Place> waterPlaces, Place treatmentsPlace) {
        /** What was found out about sources and treatments, pointing into the request. */
        List<Finding> findings() {
            List<Finding> findings = new ArrayList<>();
            for (int i = 0; i < waterPlaces.size(); i++) {
                String pointer = waterPlaces.get(i).pointer();
                prepared.waters().get(i).findings().forEach(finding -> findings.add(finding.under(pointer)));
            }
            findings.addAll(treatmentFindings());
            return findings;
        }

        List<Finding> treatmentFindings() {
            List<Finding> findings = new ArrayList<>();
            for (int i = 0; i < prepared.steps().size(); i++) {
                String pointer = treatmentsPlace.item(i).pointer();
                prepared.steps().get(i).findings().forEach(finding -> findings.add(finding.under(pointer)));
            }
            return findings;
        }
    }

    /** Reads it; every fault is recorded at its place. */
    public static Liquor toLiquor(LiquorRequest request, Place place) {
        Reading reading = read(request, place);
        PreparedLiquor prepared = reading.prepared();
        return new Liquor(
                prepared.volume(),
                prepared.treated().withFindings(reading.findings()),
                TreatmentMapper.products(prepared.treatments()),
                TreatmentMapper.salts(prepared.treatments()));
    }

    /** A liquor without fault, with its history. */
    public static PreparedLiquor prepared(LiquorRequest request) {
        return read(request, Place.root()).prepared();
    }

    /** Reads it with its history. */
    static Reading read(LiquorRequest request, Place place) {
        List<WaterSource> sources = new ArrayList<>();
        List<Place> places = new ArrayList<>();
        if (request.sources() == null) {
            Place waterPlace = place.member("water");
            Volume volume = new Volume(1);
            if (request.volume() == null) {
                place.member("volume").fault("is missing; give volume and water, or sources");
            } else {
                volume = request.volume().toVolume(place.member("volume"), SMALLEST_LITRES, LARGEST_LITRES);
            }
            sources.add(new WaterSource("", volume, WaterMapper.toReport(request.water(), waterPlace), 1));
            places.add(waterPlace);
        } else {
            if (request.volume() != null || request.water() != null) {
                place.member("sources").fault("must stand alone, but volume or water is given too");
            }
            for (int i = 0; i < request.sources().size(); i++) {
                Place item = place.member("sources").item(i);
                sources.add(toSource(request.sources().get(i), item));
                places.add(item.member("water"));
            }
        }
        List<Water> waters = new ArrayList<>();
        for (int i = 0; i < sources.size(); i++) {
            waters.add(places.get(i).build(sources.get(i)::water, Water.distilled()));
        }
        Place treatmentsPlace = place.member("treatments");
        List<Treatment> treatments = TreatmentMapper.toTreatments(request.treatments(), treatmentsPlace);
        PreparedLiquor prepared = treatmentsPlace.build(
                () -> PreparedLiquor.of(sources, waters, treatments), PreparedLiquor.of(sources, waters, List.of()));
        return new Reading(prepared, places, treatmentsPlace);
    }

    private static WaterSource toSource(WaterSourceRequest request, Place place) {
        Optional<WaterReport> report = WaterMapper.toReport(request.water(), place.member("water"));
        if (request.residualShare() != null && request.water().reportsNothing()) {
            place.member("residualShare")
                    .fault("belongs to a water that is reported; distilled water has nothing left");
        }
        return new WaterSource(
                request.name() == null ? "" : request.name(),
                request.volume().toVolume(place.member("volume"), SMALLEST_LITRES, LARGEST_LITRES),
                report,
                request.residualShare() == null ? 1 : request.residualShare());
    }
}
