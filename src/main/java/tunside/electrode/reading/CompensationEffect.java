package tunside.electrode.reading;

import java.util.Locale;
import tunside.electrode.CalibrationSignal;
import tunside.electrode.MeterCompensation;
import tunside.electrode.NernstSlope;
import tunside.electrode.TemperatureCompensation;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

/**
 * What the meter's temperature compensation did to a display.
 *
 * @param kind of the meter
 * @param meterTemperature that the meter computed with; the sample's own for millivolts
 * @param usedMvPerPh slope that it computed with
 * @param sampleMvPerPh ideal slope at the sample's temperature
 * @param effectPh displayed pH less what the same meter shows with the sample's temperature; zero for millivolts
 * @param meaning in words
 */
public record CompensationEffect(
        TemperatureCompensation kind,
        Temperature meterTemperature,
        double usedMvPerPh,
        double sampleMvPerPh,
        double effectPh,
        ReadingWord meaning) {

    /** The effect on a potential in a sample. */
    static CompensationEffect of(
            CalibrationSignal signal, MeterCompensation meter, Potential potential, Temperature sample) {
        boolean displayed = signal == CalibrationSignal.DISPLAYED_PH;
        Temperature used = displayed ? meter.meterTemperature(sample) : sample;
        double effect = displayed
                ? meter.displayedPh(potential, sample)
                        - MeterCompensation.automatic().displayedPh(potential, sample)
                : 0;
        return new CompensationEffect(
                meter.kind(),
                used,
                NernstSlope.millivoltsPerPh(used),
                NernstSlope.millivoltsPerPh(sample),
                effect,
                ReadingWord.of("compensation", displayed ? meter.kind().name().toLowerCase(Locale.ROOT) : "potential"));
    }
}
