package tunside.quantity;

import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

/** Units of temperature; base unit degree Celsius. */
public enum TemperatureUnit implements Unit {
    DEG_C("degC", Units.CELSIUS),
    DEG_F("degF", USCustomary.FAHRENHEIT);

    private final String symbol;
    private final javax.measure.UnitConverter toCelsius;

    TemperatureUnit(String symbol, javax.measure.Unit<javax.measure.quantity.Temperature> unit) {
        this.symbol = symbol;
        this.toCelsius = unit.getConverterTo(Units.CELSIUS);
    }

    @Override
    public String symbol() {
        return symbol;
    }

    @Override
    public double toBase(double value) {
        return toCelsius.convert(value);
    }
}
