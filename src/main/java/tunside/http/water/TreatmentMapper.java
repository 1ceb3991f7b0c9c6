package tunside.http.water;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.http.chemical.ChemicalMapper;
import tunside.http.chemical.MeasuredChemical;
import tunside.http.problem.Place;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.water.AcidTreatment;
import tunside.water.Boiling;
import tunside.water.Liming;
import tunside.water.SaltTreatment;
import tunside.water.Treatment;

/** Reads what is done to a liquor. */
final class TreatmentMapper {
    private static final double MOST_KG = 1000;

    private TreatmentMapper() {}

    /** Reads a list; an absent one is empty. Faults go to {@code place}, the array's. */
    static List<Treatment> toTreatments(@Nullable List<TreatmentRequest> requests, Place place) {
        List<Treatment> treatments = new ArrayList<>();
        if (requests != null) {
            for (int i = 0; i < requests.size(); i++) {
                toTreatment(requests.get(i), place.item(i)).ifPresent(treatments::add);
            }
            once(requests.stream().filter(request -> request.boiling() != null).count(), "boiling", place);
            once(requests.stream().filter(request -> request.liming() != null).count(), "liming", place);
        }
        return treatments;
    }

    private static void once(long times, String what, Place place) {
        if (times > 1) {
            place.fault("must have %s once at most but has it %s times".formatted(what, times));
        }
    }

    private static Optional<Treatment> toTreatment(TreatmentRequest request, Place place) {
        long given = Stream.of(request.acid(), request.salt(), request.boiling(), request.liming())
                .filter(value -> value != null)
                .count();
        if (given != 1) {
            place.fault("must have one of acid, salt, boiling and liming but has " + given);
            return Optional.empty();
        }
        if (request.acid() != null || request.salt() != null) {
            return ChemicalMapper.read(
                            request.acid(), request.strength(), request.salt(), request.mass(), request.volume(), place)
                    .map(TreatmentMapper::of);
        }
        if (request.strength() != null || request.mass() != null || request.volume() != null) {
            place.fault("strength, mass and volume belong to an acid or a salt; liming has a mass of its own inside");
        }
        return Optional.of(
                request.boiling() != null
                        ? toBoiling(request.boiling(), place.member("boiling"))
                        : toLiming(requireNonNull(request.liming()), place.member("liming")));
    }

    private static Treatment of(MeasuredChemical chemical) {
        if (chemical instanceof MeasuredChemical.OfAcid acid) {
            return acid.mass().isPresent()
                    ? new AcidTreatment(acid.product(), acid.mass().get())
                    : AcidTreatment.of(acid.product(), acid.volume().orElseThrow());
        }
        MeasuredChemical.OfSalt salt = (MeasuredChemical.OfSalt) chemical;
        return new SaltTreatment(salt.salt(), salt.mass());
    }

    private static Treatment toBoiling(BoilingRequest request, Place place) {
        return Boiling.of(
                optional(request.supersaturation()),
                residual(request.residualAlkalinity(), place),
                Boolean.TRUE.equals(request.lidOn()));
    }

    private static Treatment toLiming(LimingRequest request, Place place) {
        return new Liming(
                Optional.ofNullable(request.mass()).map(mass -> mass.toMass(place.member("mass"), 0, MOST_KG)),
                optional(request.supersaturation()),
                residual(request.residualAlkalinity(), place));
    }

    private static OptionalDouble residual(@Nullable AlkalinityQuantity quantity, Place place) {
        return quantity == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(quantity.toAlkalinity(place.member("residualAlkalinity"), 0, 10)
                        .meqPerL());
    }

    /** Acids among the treatments. */
    static List<AcidProduct> products(List<Treatment> treatments) {
        List<AcidProduct> products = new ArrayList<>();
        for (Treatment treatment : treatments) {
            if (treatment instanceof AcidTreatment acid) {
                products.add(acid.product());
            }
        }
        return products;
    }

    /** Salts and bases among the treatments, lime included. */
    static List<Salt> salts(List<Treatment> treatments) {
        List<Salt> salts = new ArrayList<>();
        for (Treatment treatment : treatments) {
            if (treatment instanceof SaltTreatment salt) {
                salts.add(salt.salt());
            } else if (treatment instanceof Liming) {
                salts.add(Liming.lime());
            }
        }
        return salts;
    }

    private static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
