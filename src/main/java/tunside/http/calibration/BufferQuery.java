package tunside.http.calibration;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tunside.http.problem.Place;
import tunside.http.quantity.TemperatureQuantity;
import tunside.quantity.Temperature;
import tunside.quantity.TemperatureUnit;

/** Reads the temperature that a table is asked for. */
final class BufferQuery {
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]{1,6}(\\.[0-9]{1,9})?");

    private BufferQuery() {}

    static Optional<Temperature> toTemperature(String temperature, String unit) {
        if (temperature == null && unit == null) {
            return Optional.empty();
        }
        Place place = Place.root();
        Optional<TemperatureUnit> known = Arrays.stream(TemperatureUnit.values())
                .filter(candidate -> candidate.symbol().equals(unit))
                .findFirst();
        if (known.isEmpty()) {
            String units = Arrays.stream(TemperatureUnit.values())
                    .map(TemperatureUnit::symbol)
                    .collect(Collectors.joining(", "));
            place.member("unit")
                    .fault(unit == null ? "is missing; it must be one of " + units : "must be one of " + units);
        }
        if (temperature == null || !NUMBER.matcher(temperature).matches()) {
            place.member("temperature").fault(temperature == null ? "is missing" : "must be a number, such as 25");
        }
        place.stopIfFaulty();
        Temperature read = new TemperatureQuantity(Double.parseDouble(temperature), known.orElseThrow())
                .toTemperature(place.member("temperature"), -10, 100);
        place.stopIfFaulty();
        return Optional.of(read);
    }
}
