package tunside.quantity;

import javax.measure.MetricPrefix;
import systems.uom.common.Imperial;
import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

/** Units of volume; base unit litre. US gallon 231 cubic inches, quart a quarter of it, imperial gallon 4.54609 L. */
public enum VolumeUnit implements Unit {
    ML("mL", MetricPrefix.MILLI(Units.LITRE), 1),
    L("L", Units.LITRE, 1),
    HL("hL", MetricPrefix.HECTO(Units.LITRE), 1),
    US_GAL("US-gal", USCustomary.GALLON_LIQUID, 1),
    US_QT("US-qt", USCustomary.GALLON_LIQUID, 0.25),
    US_FLOZ("US-floz", USCustomary.FLUID_OUNCE, 1),
    IMP_GAL("imp-gal", Imperial.GALLON_UK, 1);

    private final String symbol;
    private final double litres;

    VolumeUnit(String symbol, javax.measure.Unit<javax.measure.quantity.Volume> unit, double share) {
        this.symbol = symbol;
        this.litres = share * unit.getConverterTo(Units.LITRE).convert(1.0);
    }

    @Override
    public String symbol() {
        return symbol;
    }

    @Override
    public double toBase(double value) {
        return value * litres;
    }
}
