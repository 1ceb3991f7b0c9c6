package tunside.electrode;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.interpolation.AkimaSplineInterpolator;
import org.hipparchus.analysis.interpolation.LinearInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialFunction;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;
import tunside.quantity.Temperature;
import tunside.reference.Row;
import tunside.reference.Table;

/** The buffers of {@code buffers.csv} with the values of {@code buffers-*.csv}. */
public final class Buffers {
    private static final List<String> VALUES = List.of("buffers-iupac.csv", "buffers-jis.csv", "buffers-technical.csv");
    private static final Map<String, Buffer> ALL = load();

    private Buffers() {}

    /** By id, in the table's order. */
    public static Map<String, Buffer> all() {
        return ALL;
    }

    /** The buffer with this id, if there is one. */
    public static Optional<Buffer> find(String id) {
        return Optional.ofNullable(ALL.get(id));
    }

    /** A buffer that is known to be there. */
    static Buffer get(String id) {
        return find(id).orElseThrow(() -> new IllegalStateException("buffers.csv has no buffer " + id));
    }

    private static Map<String, Buffer> load() {
        Map<String, List<BufferPoint>> points = new LinkedHashMap<>();
        Map<String, String> sources = new LinkedHashMap<>();
        Set<String> fromMemory = new LinkedHashSet<>();
        for (String file : VALUES) {
            Table table = Table.read(file);
            for (Row row : table.rows()) {
                String id = row.text("buffer");
                List<BufferPoint> own = points.computeIfAbsent(id, key -> new ArrayList<>());
                BufferPoint point = new BufferPoint(row.number("temperature_degC", -10, 100), row.number("ph", 0, 14));
                if (!own.isEmpty() && !(own.get(own.size() - 1).temperatureDegC() < point.temperatureDegC())) {
                    throw row.fault("the temperatures of buffer '%s' do not rise".formatted(id));
                }
                own.add(point);
                sources.put(id, row.source());
                if (table.fromMemory()) {
                    fromMemory.add(id);
                }
            }
        }
        Map<String, Buffer> buffers = new LinkedHashMap<>();
        for (Row row : Table.read("buffers.csv").rows()) {
            Buffer buffer = buffer(row, points, sources, fromMemory);
            if (buffers.put(buffer.id(), buffer) != null) {
                throw row.fault("buffer '%s' stands twice".formatted(buffer.id()));
            }
        }
        return Collections.unmodifiableMap(buffers);
    }

    private static Buffer buffer(
            Row row, Map<String, List<BufferPoint>> points, Map<String, String> sources, Set<String> fromMemory) {
        String id = row.text("buffer");
        String between = row.text("between");
        boolean equation = between.equals("equation");
        List<BufferPoint> own = equation ? hetzerPoints() : points.get(id);
        if (own == null || own.size() < 5) {
            throw row.fault("buffer '%s' needs at least five values".formatted(id));
        }
        return new Buffer(
                id,
                TableEnums.of(BufferFamily.class, row, "family"),
                TableEnums.of(BufferSubstance.class, row, "substance"),
                row.text("composition"),
                row.number("standard_uncertainty_ph", 0, 0.1),
                own,
                curve(row, between, own),
                equation ? "HETZER-1977" : requireNonNull(sources.get(id)),
                fromMemory.contains(id));
    }

    private static DoubleUnaryOperator curve(Row row, String between, List<BufferPoint> points) {
        double[] temperatures =
                points.stream().mapToDouble(BufferPoint::temperatureDegC).toArray();
        double[] values = points.stream().mapToDouble(BufferPoint::ph).toArray();
        return switch (between) {
            case "linear" -> spline(new LinearInterpolator().interpolate(temperatures, values));
            case "smooth" -> spline(new AkimaSplineInterpolator().interpolate(temperatures, values));
            case "equation" -> degC -> HetzerPhthalate.ph(new Temperature(degC));
            default -> throw row.fault("between '%s' is none of linear, smooth, equation".formatted(between));
        };
    }

    /** The same function; a table is short, so its piece is looked for from the first on. */
    private static DoubleUnaryOperator spline(PolynomialSplineFunction function) {
        double[] knots = function.getKnots();
        double[][] coefficients = Arrays.stream(function.getPolynomials())
                .map(PolynomialFunction::getCoefficients)
                .toArray(double[][]::new);
        return degC -> {
            int piece = 0;
            while (piece < coefficients.length - 1 && degC >= knots[piece + 1]) {
                piece++;
            }
            double[] own = coefficients[piece];
            double value = 0;
            for (int power = own.length - 1; power >= 0; power--) {
                value = value * (degC - knots[piece]) + own[power];
            }
            return value;
        };
    }

    private static List<BufferPoint> hetzerPoints() {
        List<BufferPoint> points = new ArrayList<>();
        for (double degC = HetzerPhthalate.LOWEST_DEG_C; degC <= HetzerPhthalate.HIGHEST_DEG_C; degC += 5) {
            points.add(new BufferPoint(degC, HetzerPhthalate.ph(new Temperature(degC))));
        }
        return points;
    }
}
