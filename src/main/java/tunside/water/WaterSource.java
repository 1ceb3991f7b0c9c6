package tunside.water;

import java.util.List;
import java.util.Optional;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.Ion;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

/**
 * One water that goes into a liquor.
 *
 * @param name as the brewer calls it; may be empty
 * @param volume above 0
 * @param report what its laboratory found; absent: distilled water
 * @param share of what is dissolved that reverse osmosis left, 0 to 1; 1 for the water itself
 */
public record WaterSource(String name, Volume volume, Optional<WaterReport> report, double share) {
    public WaterSource {
        if (!(volume.litres() > 0)) {
            throw new IllegalArgumentException("volume of a source (%s L) must be above 0".formatted(volume.litres()));
        }
        WaterReport.require("share that reverse osmosis leaves", share, 0, 1);
    }

    /** A water as reported. */
    public static WaterSource of(Volume volume, WaterReport report) {
        return new WaterSource("", volume, Optional.of(report), 1);
    }

    /** Distilled water. */
    public static WaterSource distilled(Volume volume) {
        return new WaterSource("", volume, Optional.empty(), 1);
    }

    /** What it is. */
    public Water water() {
        Water water = report.map(Water::of).orElseGet(Water::distilled);
        return share < 1 ? water.afterReverseOsmosis(share) : water;
    }

    /**
     * What it may be instead: with each of its uncertain values one standard uncertainty further. A distilled water may
     * have come to the carbon dioxide of the air.
     */
    List<Water> variedWaters() {
        if (report.isEmpty()) {
            Water distilled = Water.distilled();
            Temperature temperature = distilled.temperature();
            return List.of(Water.closed(
                    CarbonateState.open(distilled.solution(), temperature, CarbonateState.AIR_PARTIAL_PRESSURE_ATM),
                    temperature,
                    distilled.ph(),
                    List.of()));
        }
        WaterReport given = report.get();
        WaterReport known = given.alkalinityMeqPerL().isPresent()
                ? given
                : given.withMoreAlkalinity(Water.of(given).alkalinityMeqPerL());
        return List.of(
                withOtherAlkalinity(known, alkalinityUncertainty(given, known)),
                with(given.withPh(Math.min(11, given.statedPh() + phUncertainty(given)))),
                with(given.withIons(
                        given.scaled(List.of(Ion.CALCIUM, Ion.MAGNESIUM), 1 + WaterModel.value("hardness-relative")))));
    }

    private Water with(WaterReport other) {
        return new WaterSource(name, volume, Optional.of(other), share).water();
    }

    /** With more; with less where no water takes more acid from its pH down to the end point. */
    private Water withOtherAlkalinity(WaterReport known, double meqPerL) {
        try {
            return with(known.withMoreAlkalinity(meqPerL));
        } catch (IllegalArgumentException e) {
            return with(known.withMoreAlkalinity(-meqPerL));
        }
    }

    private static double alkalinityUncertainty(WaterReport given, WaterReport known) {
        String kind = given.alkalinityMeqPerL().isPresent() ? "alkalinity" : "alkalinity-of-ions";
        return Math.hypot(
                WaterModel.value(kind + "-relative")
                        * Math.abs(known.alkalinityMeqPerL().orElse(0)),
                WaterModel.value(kind + "-floor"));
    }

    private static double phUncertainty(WaterReport given) {
        return WaterModel.value(given.phIsStated() ? "sample-ph" : "assumed-ph-uncertainty");
    }
}
