package tunside.quantity;

import javax.measure.MetricPrefix;
import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

/** Units of mass; base unit kilogram. Pound and ounce are avoirdupois (international pound 0.45359237 kg). */
public enum MassUnit implements Unit {
    KG("kg", Units.KILOGRAM),
    G("g", Units.GRAM),
    MG("mg", MetricPrefix.MILLI(Units.GRAM)),
    LB("lb", USCustomary.POUND),
    OZ("oz", USCustomary.OUNCE);

    private final String symbol;
    private final double kilograms;

    MassUnit(String symbol, javax.measure.Unit<javax.measure.quantity.Mass> unit) {
        this.symbol = symbol;
        this.kilograms = unit.getConverterTo(Units.KILOGRAM).convert(1.0);
    }

    @Override
    public String symbol() {
        return symbol;
    }

    @Override
    public double toBase(double value) {
        return value * kilograms;
    }
}
