package tunside.http.chemical;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.Acid;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Salt;
import tunside.chemistry.Salts;
import tunside.http.json.KnownIds;
import tunside.http.problem.Place;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.quantity.Strength;

/** Reads one acid, salt or base with its amount. */
public final class ChemicalMapper {
    private static final double MOST_KG = 1000;
    private static final double MOST_L = 1000;

    private ChemicalMapper() {}

    /**
     * Reads it; exactly one of acid and salt is given, which the caller has checked.
     *
     * @param place of the object that has the members {@code acid, strength, salt, mass, volume}
     * @return empty after a fault
     */
    public static Optional<MeasuredChemical> read(
            @Nullable String acid,
            @Nullable StrengthQuantity strength,
            @Nullable String salt,
            @Nullable MassQuantity mass,
            @Nullable VolumeQuantity volume,
            Place place) {
        if (salt != null) {
            return salt(salt, strength, mass, volume, place);
        }
        return toProduct(
                        requireNonNull(acid),
                        strength == null ? null : strength.toStrength(place.member("strength")),
                        place)
                .flatMap(product -> acid(product, mass, volume, place));
    }

    /**
     * Reads an acid and its strength as bought.
     *
     * @param strength null where the request has none, which is a fault
     * @param place of the object that has the members {@code acid} and {@code strength}
     */
    public static Optional<AcidProduct> toProduct(String acidId, @Nullable Strength strength, Place place) {
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

    private static Optional<MeasuredChemical> acid(
            AcidProduct product, @Nullable MassQuantity mass, @Nullable VolumeQuantity volume, Place place) {
        if ((mass == null) == (volume == null)) {
            place.fault("an acid needs either a mass or a volume");
            return Optional.empty();
        }
        if (mass != null) {
            return Optional.of(new MeasuredChemical.OfAcid(
                    product, Optional.of(mass.toMass(place.member("mass"), 0, MOST_KG)), Optional.empty()));
        }
        if (product.solid()) {
            place.member("volume").fault("a powder is weighed: give its mass");
            return Optional.empty();
        }
        return Optional.of(new MeasuredChemical.OfAcid(
                product, Optional.empty(), Optional.of(volume.toVolume(place.member("volume"), 0, MOST_L))));
    }

    private static Optional<MeasuredChemical> salt(
            String id,
            @Nullable StrengthQuantity strength,
            @Nullable MassQuantity mass,
            @Nullable VolumeQuantity volume,
            Place place) {
        Optional<Salt> salt = Salts.find(id);
        if (salt.isEmpty()) {
            place.member("salt").fault(KnownIds.SALT.fault(id));
        }
        if (strength != null) {
            place.member("strength").fault("belongs to an acid; a salt or base is weighed pure");
        }
        if (volume != null) {
            place.member("volume").fault("belongs to an acid; a salt or base is weighed");
        }
        if (mass == null) {
            place.member("mass").fault("is missing: a salt or base needs its mass");
            return Optional.empty();
        }
        var weighed = mass.toMass(place.member("mass"), 0, MOST_KG);
        return salt.map(known -> new MeasuredChemical.OfSalt(known, weighed));
    }
}
