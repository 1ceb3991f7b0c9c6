package tunside.http.mash;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.finding.Finding;
import tunside.http.chemical.ChemicalMapper;
import tunside.http.chemical.MeasuredChemical;
import tunside.http.problem.Place;
import tunside.mash.AcidAddition;
import tunside.mash.Addition;
import tunside.mash.MashChecks;
import tunside.mash.SaltAddition;
import tunside.quantity.Strength;

/** Reads acids, salts and bases that go into a mash, for every capability that has them. */
public final class AdditionMapper {
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
    public static Additions toAdditions(@Nullable List<AdditionRequest> requests, Place place) {
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

    /** Reads a single one; none after a fault at {@code place}. */
    public static Additions toAddition(AdditionRequest request, Place place) {
        Additions read = new Additions(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        read(request, place, read);
        return read;
    }

    private static void read(AdditionRequest request, Place place, Additions read) {
        if ((request.acid() == null) == (request.salt() == null)) {
            place.fault("must name either an acid or a salt");
            return;
        }
        ChemicalMapper.read(request.acid(), request.strength(), request.salt(), request.mass(), request.volume(), place)
                .ifPresent(measured -> {
                    if (measured instanceof MeasuredChemical.OfAcid acid) {
                        read.products().add(acid.product());
                        MashChecks.of(acid.product())
                                .forEach(finding -> read.findings().add(finding.under(place.pointer())));
                        read.additions()
                                .add(
                                        acid.mass().isPresent()
                                                ? AcidAddition.of(
                                                        acid.product(),
                                                        acid.mass().get())
                                                : AcidAddition.of(
                                                        acid.product(),
                                                        acid.volume().orElseThrow()));
                    } else if (measured instanceof MeasuredChemical.OfSalt salt) {
                        read.additions().add(new SaltAddition(salt.salt(), salt.mass()));
                    }
                });
    }

    /** As {@link ChemicalMapper#toProduct}. */
    public static Optional<AcidProduct> toProduct(String acidId, @Nullable Strength strength, Place place) {
        return ChemicalMapper.toProduct(acidId, strength, place);
    }
}
