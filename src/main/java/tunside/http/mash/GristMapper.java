package tunside.http.mash;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import tunside.finding.Finding;
import tunside.http.json.KnownIds;
import tunside.http.problem.Place;
import tunside.mash.BufferCurve;
import tunside.mash.Estimate;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Malt;
import tunside.mash.MaltClass;
import tunside.mash.MaltClasses;
import tunside.mash.MashChecks;
import tunside.mash.MashModel;
import tunside.mash.MeasuredMalt;
import tunside.quantity.Mass;

/** Reads a grist, for every capability that has one. */
public final class GristMapper {
    private static final double LEAST_KG = 1e-6;
    private static final double MOST_KG = 10_000;
    private static final GristPart FALLBACK = new GristPart(Malt.of("pale"), new Mass(1));

    private GristMapper() {}

    /** The malts in the order of the request; the faults of all go to {@code place}, the array's. */
    public static List<GristPart> toParts(List<MaltRequest> malts, Place place) {
        List<GristPart> parts = new ArrayList<>();
        for (int i = 0; i < malts.size(); i++) {
            parts.add(toPart(malts.get(i), place.item(i)));
        }
        return parts;
    }

    /** The parts as one grist. */
    public static Grist toGrist(List<GristPart> parts) {
        return new Grist(parts);
    }

    /** The checks of every malt, each pointing at its place in the request. */
    public static List<Finding> findings(List<GristPart> parts, Place place) {
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            String pointer = place.item(i).pointer();
            MashChecks.of(parts.get(i).malt()).forEach(finding -> findings.add(finding.under(pointer)));
        }
        return findings;
    }

    private static GristPart toPart(MaltRequest request, Place place) {
        Mass mass = request.mass().toMass(place.member("mass"), LEAST_KG, MOST_KG);
        Optional<MaltClass> maltClass = MaltClasses.find(request.malt());
        if (maltClass.isEmpty()) {
            place.member("malt").fault(KnownIds.MALT.fault(request.malt()));
        }
        MeasuredMalt measured = request.measured() == null
                ? MeasuredMalt.NOTHING
                : toMeasured(request.measured(), place.member("measured"));
        return maltClass
                .map(known -> new GristPart(toMalt(request, known, measured, place), mass))
                .orElse(FALLBACK);
    }

    private static Malt toMalt(MaltRequest request, MaltClass maltClass, MeasuredMalt measured, Place place) {
        var colour = Optional.ofNullable(request.colour())
                .map(quantity -> quantity.toColour(place.member("colour"), 0, 2000));
        Optional<Estimate> lactic = Optional.ofNullable(request.lacticAcidPercent())
                .map(percent ->
                        new Estimate(percent, MashModel.standard().handling().labelledLacticAcidPercent()));
        Place at = lactic.isPresent() ? place.member("lacticAcidPercent") : place;
        return at.build(
                () -> new Malt(maltClass, colour, measured, lactic, Optional.ofNullable(request.product())),
                FALLBACK.malt());
    }

    private static MeasuredMalt toMeasured(MeasuredMaltRequest request, Place place) {
        MashModel.Handling usual = MashModel.standard().handling();
        Optional<Estimate> ph = Optional.ofNullable(request.distilledWaterPh())
                .map(value ->
                        new Estimate(value, orElse(request.distilledWaterPhUncertainty(), usual.measuredMaltPh())));
        Optional<Estimate> acidity = Optional.ofNullable(request.acidityToPh57MeqPerKg())
                .map(value -> new Estimate(
                        value,
                        orElse(
                                request.acidityUncertaintyMeqPerKg(),
                                Math.abs(value) * usual.measuredAcidityRelative())));
        OptionalDouble ratio = request.liquorRatioLPerKg() == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(request.liquorRatioLPerKg());
        Optional<BufferCurve> curve = toCurve(request, place, usual);
        return place.build(() -> new MeasuredMalt(ph, ratio, curve, acidity), MeasuredMalt.NOTHING);
    }

    private static Optional<BufferCurve> toCurve(MeasuredMaltRequest request, Place place, MashModel.Handling usual) {
        double relative = orElse(request.bufferingRelativeUncertainty(), usual.measuredBufferingRelative());
        MeasuredMaltRequest.CoefficientsRequest three = request.coefficients();
        if (three != null && request.bufferingMeqPerKgPh() != null) {
            place.member("coefficients").fault("stands beside bufferingMeqPerKgPh; give one of the two");
            return Optional.empty();
        }
        if (three != null) {
            return Optional.of(place.member("coefficients")
                    .build(
                            () -> new BufferCurve(three.a1(), three.a2(), three.a3(), relative),
                            BufferCurve.linear(1, 0)));
        }
        return Optional.ofNullable(request.bufferingMeqPerKgPh()).map(value -> BufferCurve.linear(value, relative));
    }

    private static double orElse(@Nullable Double value, double fallback) {
        return value == null ? fallback : value;
    }
}
