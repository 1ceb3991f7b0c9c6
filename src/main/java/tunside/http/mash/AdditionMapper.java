package tunside.http.mash;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tunside.chemistry.Acid;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Salt;
import tunside.chemistry.Salts;
import tunside.finding.Finding;
import tunside.http.json.KnownIds;
import tunside.http.problem.Place;
import tunside.mash.AcidAddition;
import tunside.mash.Addition;
import tunside.mash.MashChecks;
import tunside.mash.SaltAddition;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Volume;

/** Reads acids, salts and bases that go into a mash, for every capability that has them. */
public final class AdditionMapper {
    private static final double MOST_KG = 1000;
    private static final double MOST_L = 1000;

    private AdditionMapper() {}

    /**
     * What goes into the mash, with the acid products behind it.
     *
     * @param additions in the order of the request
     * @param products of the acids among them
     * @param findings about the products, pointing into the request
     */
    public record Additions(List<Addition> additions, List<AcidProduct> products, List<Finding> findings) {
        /** The salts and bases among them. */
        public List<Salt> salts() {
            return additions.stream()
                    .filter(SaltAddition.class::isInstance)
                    .map(addition -> ((SaltAddition) addition).salt())
                    .toList();
        }
    }

    /** Reads a list; the faults of all go to {@code place}, the array's. An absent list is an empty one. */
    public static Additions toAdditions(List<AdditionRequest> requests, Place place) {
        List<Addition> additions = new ArrayList<>();
        List<AcidProduct> products = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        Additions read = new Additions(additions, products, findings);
        if (requests != null) {
            for (int i = 0; i < requests.size(); i++) {
                read(requests.get(i), place.item(i), read);
            }
        }
        return read;
    }

    private static void read(AdditionRequest request, Place place, Additions read) {
        if ((request.acid() == null) == (request.salt() == null)) {
            place.fault("must name either an acid or a salt");
        } else if (request.salt() != null) {
            salt(request, place).ifPresent(read.additions()::add);
        } else {
            toProduct(
                            request.acid(),
                            request.strength() == null
                                    ? null
                                    : request.strength().toStrength(place.member("strength")),
                            place)
                    .ifPresent(product -> {
                        read.products().add(product);
                        MashChecks.of(product)
                                .forEach(finding -> read.findings().add(finding.under(place.pointer())));
                        amount(request, product, place).ifPresent(read.additions()::add);
                    });
        }
    }

    /**
     * Reads an acid and its strength as bought.
     *
     * @param strength null where the request has none, which is a fault
     * @param place of the object that has the members {@code acid} and {@code strength}
     */
    public static Optional<AcidProduct> toProduct(String acidId, Strength strength, Place place) {
        Optional<Acid> acid = Acids.find(acidId);
        if (acid.isEmpty()) {
            place.member("acid").fault(KnownIds.ACID.fault(acidId));
        }
        if (strength == null) {
            place.member("strength").fault("is missing: an acid needs the strength of its label");
        }
        if (acid.isEmpty() || strength == null) {
            return Optional.empty();
        }
        return Optional.ofNullable(place.member("strength").build(() -> AcidProduct.of(acid.get(), strength), null));
    }

    private static Optional<Addition> amount(AdditionRequest request, AcidProduct product, Place place) {
        if ((request.mass() == null) == (request.volume() == null)) {
            place.fault("an acid needs either a mass or a volume");
            return Optional.empty();
        }
        if (request.mass() != null) {
            Mass mass = request.mass().toMass(place.member("mass"), 0, MOST_KG);
            return Optional.of(AcidAddition.of(product, mass));
        }
        if (product.solid()) {
            place.member("volume").fault("a powder is weighed: give its mass");
            return Optional.empty();
        }
        Volume volume = request.volume().toVolume(place.member("volume"), 0, MOST_L);
        return Optional.of(AcidAddition.of(product, volume));
    }

    private static Optional<Addition> salt(AdditionRequest request, Place place) {
        Optional<Salt> salt = Salts.find(request.salt());
        if (salt.isEmpty()) {
            place.member("salt").fault(KnownIds.SALT.fault(request.salt()));
        }
        if (request.strength() != null) {
            place.member("strength").fault("belongs to an acid; a salt or base is weighed pure");
        }
        if (request.volume() != null) {
            place.member("volume").fault("belongs to an acid; a salt or base is weighed");
        }
        if (request.mass() == null) {
            place.member("mass").fault("is missing: a salt or base needs its mass");
            return Optional.empty();
        }
        Mass mass = request.mass().toMass(place.member("mass"), 0, MOST_KG);
        return salt.map(known -> new SaltAddition(known, mass));
    }
}
