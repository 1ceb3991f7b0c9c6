package tunside.mash;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was measured on this very lot of malt; each value replaces that of the class, with its own uncertainty.
 *
 * @param distilledWaterPh pH of a mash in distilled water, cooled sample, 2.5 to 7.5
 * @param liquorRatioLPerKg litres per kg of that mash, or of the titrated one; absent: as for the class
 * @param buffering measured on this lot
 * @param acidityToPh57MeqPerKg base that brings the distilled-water mash to pH 5.7, mEq/kg; negative where acid does
 */
public record MeasuredMalt(
        Optional<Estimate> distilledWaterPh,
        OptionalDouble liquorRatioLPerKg,
        Optional<BufferCurve> buffering,
        Optional<Estimate> acidityToPh57MeqPerKg) {
    /** Nothing measured. */
    public static final MeasuredMalt NOTHING =
            new MeasuredMalt(Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty());

    public MeasuredMalt {
        distilledWaterPh.ifPresent(ph -> {
            if (!(ph.value() >= 2.5 && ph.value() <= 7.5)) {
                throw new IllegalArgumentException(
                        "distilled-water pH (%s) must be from 2.5 to 7.5".formatted(ph.value()));
            }
        });
        liquorRatioLPerKg.ifPresent(ratio -> {
            if (!(ratio >= 1 && ratio <= 50)) {
                throw new IllegalArgumentException("liquor ratio (%s L/kg) must be from 1 to 50".formatted(ratio));
            }
        });
        acidityToPh57MeqPerKg.ifPresent(acidity -> {
            if (!(acidity.value() >= -50 && acidity.value() <= 600)) {
                throw new IllegalArgumentException(
                        "acidity to pH 5.7 (%s mEq/kg) must be from -50 to 600".formatted(acidity.value()));
            }
        });
    }

    /** A distilled-water pH and a linear buffering, at the class's liquor ratio. */
    public static MeasuredMalt of(Estimate distilledWaterPh, BufferCurve buffering) {
        return new MeasuredMalt(
                Optional.of(distilledWaterPh), OptionalDouble.empty(), Optional.of(buffering), Optional.empty());
    }

    /** Whether the malt's acidity is known by measurement, not by its class. */
    public boolean knowsAcidity() {
        return distilledWaterPh.isPresent() || acidityToPh57MeqPerKg.isPresent();
    }

    /** Whether anything that sets the malt's protons was measured. */
    public boolean knowsProtons() {
        return knowsAcidity() || buffering.isPresent();
    }
}
