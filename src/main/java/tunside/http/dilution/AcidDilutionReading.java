package tunside.http.dilution;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.Acid;
import tunside.chemistry.AcidProduct;
import tunside.dosing.AcidDilution;
import tunside.dosing.AcidDilutionConditions;
import tunside.dosing.AcidDilutionLimits;
import tunside.http.answer.Rounded;
import tunside.http.mash.AdditionMapper;
import tunside.http.problem.Place;
import tunside.http.problem.UnanswerableException;
import tunside.http.quantity.TemperatureQuantity;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Temperature;

/** A request as the domain reads it. */
record AcidDilutionReading(AcidDilution dilution, AcidDilutionConditions conditions) {
    /** Strengths closer than this share are one strength. */
    private static final double SAME = 1e-3;

    private static final double LEAST_MADE = 0.01;
    private static final double LEAST_USED = 0.001;
    private static final double MOST_MADE = 1000;
    private static final double MOST_USED = 100;
    private static final double MOST_KG = 10_000;
    private static final double ROOM_CELSIUS = 20;

    private static final List<String> AMOUNTS = List.of("wantedVolume", "wantedMass", "acidVolume", "acidMass");

    static AcidDilutionReading of(AcidDilutionRequest request) {
        Place place = Place.root();
        Optional<AcidProduct> strong = AdditionMapper.toProduct(
                request.acid(), request.strength().toStrength(place.member("strength")), place);
        Place wantedPlace = place.member("wantedStrength");
        Strength wanted = request.wantedStrength().toStrength(wantedPlace);
        Optional<Acid> acid = tunside.chemistry.Acids.find(request.acid());
        Optional<AcidProduct> weak = acid.map(known -> wantedPlace.build(() -> AcidProduct.of(known, wanted), null));
        Temperature water = temperature(request.waterTemperature(), place.member("waterTemperature"), 0, 100);
        Temperature product = temperature(request.acidTemperature(), place.member("acidTemperature"), 0, 35);
        double warmLimit = request.warmLimit() == null
                ? AcidDilutionLimits.usualWarmLimitCelsius()
                : request.warmLimit()
                        .toTemperature(place.member("warmLimit"), 40, 60)
                        .celsius();
        double label = request.labelUncertaintyPercent() == null
                ? AcidDilutionLimits.usualLabelShare()
                : request.labelUncertaintyPercent() / 100;
        Optional<Mass> amount = amount(request, strong, weak, place);
        place.stopIfFaulty();
        AcidDilution dilution = dilution(request, strong.orElseThrow(), weak.orElseThrow(), amount.orElseThrow());
        Place at = place.member(given(request).get(0));
        at.within(
                dilution.weakGrams() / 1000,
                0,
                MOST_KG,
                "kg",
                () -> Rounded.text(Rounded.significant(dilution.weakGrams() / 1000, 4)) + " kg of what is made");
        place.stopIfFaulty();
        return new AcidDilutionReading(dilution, new AcidDilutionConditions(water, product, warmLimit, label));
    }

    private static AcidDilution dilution(
            AcidDilutionRequest request, AcidProduct strong, AcidProduct weak, Mass amount) {
        double ratio = weak.massPercent() / strong.massPercent();
        if (ratio > 1 - SAME) {
            throw new UnanswerableException(
                    "/wantedStrength",
                    ratio < 1 + SAME
                            ? "The strength wanted is the one in hand, %s %%w/w: there is nothing to dilute."
                                    .formatted(percent(strong))
                            : "Water makes an acid weaker, never stronger: %s %%w/w is wanted and %s %%w/w is in hand. Ask for less, or start from a stronger acid."
                                    .formatted(percent(weak), percent(strong)));
        }
        return request.wantedVolume() != null || request.wantedMass() != null
                ? AcidDilution.making(strong, weak, amount)
                : AcidDilution.using(strong, weak, amount);
    }

    private static String percent(AcidProduct product) {
        return Rounded.text(Rounded.significant(product.massPercent(), 4));
    }

    private static Temperature temperature(
            @Nullable TemperatureQuantity quantity, Place place, double low, double high) {
        return quantity == null ? new Temperature(ROOM_CELSIUS) : quantity.toTemperature(place, low, high);
    }

    /** Names of the amounts that the request gives. */
    private static List<String> given(AcidDilutionRequest request) {
        Object[] amounts = {request.wantedVolume(), request.wantedMass(), request.acidVolume(), request.acidMass()};
        List<String> given = new ArrayList<>();
        for (int i = 0; i < amounts.length; i++) {
            if (amounts[i] != null) {
                given.add(AMOUNTS.get(i));
            }
        }
        return given;
    }

    /** The amount as a mass of what it is of; empty after a fault. */
    private static Optional<Mass> amount(
            AcidDilutionRequest request, Optional<AcidProduct> strong, Optional<AcidProduct> weak, Place place) {
        List<String> given = given(request);
        if (given.size() != 1) {
            place.fault("must name one of %s but has %s".formatted(String.join(", ", AMOUNTS), given.size()));
            return Optional.empty();
        }
        Place at = place.member(given.get(0));
        if (request.wantedMass() != null) {
            return Optional.of(request.wantedMass().toMass(at, LEAST_MADE, MOST_MADE));
        }
        if (request.acidMass() != null) {
            return Optional.of(request.acidMass().toMass(at, LEAST_USED, MOST_USED));
        }
        if (request.wantedVolume() != null) {
            double litres =
                    request.wantedVolume().toVolume(at, LEAST_MADE, MOST_MADE).litres();
            return weak.map(product -> new Mass(litres * product.densityGPerMl()));
        }
        double litres = requireNonNull(request.acidVolume())
                .toVolume(at, LEAST_USED, MOST_USED)
                .litres();
        if (strong.isPresent() && strong.get().solid()) {
            at.fault("a powder is weighed: give acidMass");
        }
        return strong.map(product -> new Mass(litres * product.densityGPerMl()));
    }
}
