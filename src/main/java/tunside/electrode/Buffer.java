package tunside.electrode;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import tunside.quantity.Temperature;

/**
 * A buffer whose pH is known against temperature.
 *
 * <p>Between the rows of its table the IUPAC and technical families go linearly (error under 0.001 on the 5 K grid), the
 * JIS family by a smooth Akima spline, as its source asks. Outside the table there is no value.
 */
public final class Buffer {
    private final String id;
    private final BufferFamily family;
    private final BufferSubstance substance;
    private final String composition;
    private final double standardUncertaintyPh;
    private final List<BufferPoint> points;
    private final double lowestDegC;
    private final double highestDegC;
    private final DoubleUnaryOperator phAtDegC;
    private final String source;
    private final boolean fromMemory;

    Buffer(
            String id,
            BufferFamily family,
            BufferSubstance substance,
            String composition,
            double standardUncertaintyPh,
            List<BufferPoint> points,
            DoubleUnaryOperator phAtDegC,
            String source,
            boolean fromMemory) {
        this.id = id;
        this.family = family;
        this.substance = substance;
        this.composition = composition;
        this.standardUncertaintyPh = standardUncertaintyPh;
        this.points = List.copyOf(points);
        this.lowestDegC = points.get(0).temperatureDegC();
        this.highestDegC = points.get(points.size() - 1).temperatureDegC();
        this.phAtDegC = phAtDegC;
        this.source = source;
        this.fromMemory = fromMemory;
    }

    /** As requests name it, such as {@code jis-phosphate}. */
    public String id() {
        return id;
    }

    public BufferFamily family() {
        return family;
    }

    public BufferSubstance substance() {
        return substance;
    }

    /** What it is made of, in words. */
    public String composition() {
        return composition;
    }

    /** How far a fresh bought or made-up buffer may be off its table, one standard deviation in pH. */
    public double standardUncertaintyPh() {
        return standardUncertaintyPh;
    }

    /** The rows of its table, by rising temperature. */
    public List<BufferPoint> points() {
        return points;
    }

    /** Id of the publication of its table. */
    public String source() {
        return source;
    }

    /** Whether its table was typed from memory. */
    public boolean fromMemory() {
        return fromMemory;
    }

    /** The lowest temperature of the table. */
    public Temperature lowestTemperature() {
        return new Temperature(lowestDegC);
    }

    /** The highest temperature of the table. */
    public Temperature highestTemperature() {
        return new Temperature(highestDegC);
    }

    /** Whether the table has a value at this temperature. */
    public boolean covers(Temperature temperature) {
        return covers(temperature.celsius());
    }

    private boolean covers(double celsius) {
        return celsius >= lowestDegC && celsius <= highestDegC;
    }

    /** pH at a temperature of the buffer itself; NaN outside the table. */
    double phOrNaN(double celsius) {
        return covers(celsius) ? phAtDegC.applyAsDouble(celsius) : Double.NaN;
    }

    /**
     * pH at a temperature of the buffer itself.
     *
     * @throws IllegalArgumentException outside the table
     */
    public double ph(Temperature temperature) {
        if (!covers(temperature)) {
            throw new IllegalArgumentException("must be from %s to %s degC for the buffer %s but is %s degC"
                    .formatted(lowestDegC, highestDegC, id, temperature.celsius()));
        }
        return phAtDegC.applyAsDouble(temperature.celsius());
    }

    @Override
    public String toString() {
        return id;
    }
}
