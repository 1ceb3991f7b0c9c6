package tunside.http.picture;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import java.util.regex.Pattern;
import org.jfree.chart.plot.XYPlot;
import tunside.http.answer.Rounded;
import tunside.http.mash.MashPredictionResponse.PhCurve;
import tunside.http.mash.MashPredictionResponse.PhCurvePoint;
import tunside.mash.PhRange;

/** The predicted pH against one member of the request, in its band. */
final class VariedPh {
    private static final int LONGEST_LABEL = 40;
    private static final int MANY = 40;

    private VariedPh() {}

    static Panel of(PhCurve curve, PhRange range) {
        Extent values = new Extent();
        Extent ph =
                new Extent().add(range.lowPh().orElseThrow()).add(range.highPh().orElseThrow());
        Marks marks = new Marks("varied");
        List<List<PhCurvePoint>> pieces = new ArrayList<>();
        boolean goesOn = false;
        for (PhCurvePoint point : curve.points()) {
            values.add(point.value());
            if (point.ph() == null) {
                goesOn = false;
                continue;
            }
            if (!goesOn) {
                pieces.add(new ArrayList<>());
            }
            goesOn = true;
            pieces.get(pieces.size() - 1).add(point);
            marks.add(point.value(), point.ph());
            ph.add(requireNonNull(point.interval90()).low())
                    .add(requireNonNull(point.interval90()).high());
        }
        XYPlot plot = Chart.of(
                Chart.axis(label(curve), values.low(0.04), values.high(0.04)),
                Chart.axis("pH of the cooled sample", ph.low(0.05), ph.high(0.05)));
        Chart.rangeOfY(plot, range.lowPh().orElseThrow(), range.highPh().orElseThrow());
        pieces.forEach(piece -> draw(plot, piece));
        marks.drawOn(plot, Ink.FIRST, curve.points().size() > MANY ? MarkShape.DOT : MarkShape.DISC);
        return new Panel(
                "pH against " + name(curve),
                plot,
                270,
                List.of(
                        Key.line("Predicted pH", Ink.FIRST, Line.MAIN),
                        Key.band("It lies in here with a probability of 90 %", Ink.FIRST, Chart.BAND_OPACITY, null),
                        Key.band("Accepted range of a mash", Ink.RANGE, Chart.RANGE_OPACITY, Line.DOTTED)));
    }

    static String inWords(PhCurve curve) {
        StringJoiner words = new StringJoiner("; ", " pH against " + label(curve) + ": ", ".");
        for (PhCurvePoint point : curve.points()) {
            words.add("%s at %s"
                    .formatted(
                            point.ph() == null ? "no answer" : Rounded.text(point.ph()), Rounded.text(point.value())));
        }
        return words.toString();
    }

    private static void draw(XYPlot plot, List<PhCurvePoint> piece) {
        Chart.curve(
                plot,
                Ink.FIRST,
                Line.MAIN,
                piece.stream().mapToDouble(PhCurvePoint::value).toArray(),
                piece.stream().mapToDouble(PhCurvePoint::ph).toArray(),
                piece.stream()
                        .mapToDouble(point -> requireNonNull(point.interval90()).low())
                        .toArray(),
                piece.stream()
                        .mapToDouble(point -> requireNonNull(point.interval90()).high())
                        .toArray());
    }

    private static String label(PhCurve curve) {
        return curve.unit() == null ? name(curve) : name(curve) + ", " + curve.unit();
    }

    /** The pointer in words, counting from 1; of a long one its end. */
    private static String name(PhCurve curve) {
        String words = Pattern.compile("/(\\d+)")
                .matcher(curve.pointer())
                .replaceAll(index -> " " + (Long.parseLong(index.group(1)) + 1))
                .replace('/', ' ')
                .strip();
        return words.length() <= LONGEST_LABEL ? words : "… " + words.substring(words.length() - LONGEST_LABEL);
    }
}
