package tunside.http.picture;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import tunside.http.answer.Rounded;
import tunside.http.picture.Picture.Paragraph;
import tunside.http.reading.PhReadingResponse;
import tunside.http.reading.PhReadingResponse.CoursePoint;
import tunside.http.reading.PhReadingResponse.PhReadingResult;
import tunside.http.reading.PhReadingResponse.RangeProbability;
import tunside.http.reading.PhReadingResponse.ReadingSettling;

/** How a series of readings settles, where it is heading, and where that lies against the range. */
final class PhReadingPicture {
    private static final int MANY = 40;
    private static final double SHORTEST_S = 10;
    private static final double AHEAD = 0.12;

    private final PhReadingResponse answer;
    private final PhReadingResult result;
    private final ReadingSettling settling;

    private PhReadingPicture(PhReadingResponse answer) {
        this.answer = answer;
        this.result = answer.result();
        this.settling = result.settling();
    }

    static Picture of(PhReadingResponse answer) {
        return new PhReadingPicture(answer).picture();
    }

    private Picture picture() {
        String at20 = Rounded.text(result.at20().ph());
        String title = switch (result.verdict()) {
            case IN_RANGE -> "pH " + at20 + ": in the range";
            case ABOVE -> "pH " + at20 + ": above the range";
            case BELOW -> "pH " + at20 + ": below the range";
            case CANNOT_TELL -> "pH " + at20 + ", not sure enough to tell";
        };
        String lead = "At 20 °C, 90 %% interval %s to %s. %s"
                .formatted(
                        Rounded.text(result.at20().low90()),
                        Rounded.text(result.at20().high90()),
                        result.advice().isEmpty() ? "" : result.advice().get(0).message());
        List<Paragraph> caption = Caption.of(answer.checks(), answer.safety(), answer.basis());
        StringJoiner words = new StringJoiner(" ");
        words.add(title + ".").add(lead);
        words.add("%s readings; heading for pH %s at %s °C, 90 %% interval %s to %s."
                .formatted(
                        settling.course().size(),
                        Rounded.text(settling.headingFor()),
                        temperature(),
                        Rounded.text(settling.low90()),
                        Rounded.text(settling.high90())));
        words.add(range() + ".").add(Caption.inWords(caption));
        return new Picture(title, lead.strip(), List.of(course(), against()), caption, words.toString());
    }

    private String temperature() {
        return Rounded.text(result.atSampleTemperature().temperature().value());
    }

    private Panel course() {
        Extent seconds = new Extent().add(0).add(SHORTEST_S);
        Extent ph = new Extent().add(settling.low90()).add(settling.high90());
        Marks readings = new Marks("reading");
        Marks leftOut = new Marks("left-out");
        List<CoursePoint> curve = new ArrayList<>();
        for (int i = 0; i < settling.course().size(); i++) {
            CoursePoint point = settling.course().get(i);
            (settling.leftOut().contains(i) ? leftOut : readings).add(point.elapsedS(), point.ph());
            seconds.add(point.elapsedS());
            ph.add(point.ph());
            if (point.curvePh() != null) {
                curve.add(point);
                ph.add(point.curvePh());
            }
        }
        double end = seconds.high(AHEAD / 2);
        XYPlot plot = Chart.of(
                Chart.axis("Time since the first reading, s", seconds.low(0.03), seconds.high(AHEAD)),
                Chart.axis("pH at %s °C".formatted(temperature()), ph.low(0.06), ph.high(0.06)));
        plot.addRangeMarker(Chart.band(settling.low90(), settling.high90(), Ink.SECOND), Layer.BACKGROUND);
        plot.addRangeMarker(Chart.marker(settling.headingFor(), Ink.SECOND, Line.DASHED), Layer.BACKGROUND);
        List<Key> keys = new ArrayList<>();
        keys.add(Key.mark("Reading", Ink.FIRST, shape()));
        if (!curve.isEmpty()) {
            Chart.line(
                    plot,
                    Ink.FIRST,
                    Line.THIN,
                    curve.stream().mapToDouble(CoursePoint::elapsedS).toArray(),
                    curve.stream().mapToDouble(CoursePoint::curvePh).toArray());
            keys.add(Key.line("Curve of the approach", Ink.FIRST, Line.THIN));
        }
        readings.drawOn(plot, Ink.FIRST, shape());
        if (leftOut.size() > 0) {
            leftOut.drawOn(plot, Ink.TEXT, MarkShape.CROSS);
            keys.add(Key.mark("Reading left out", Ink.TEXT, MarkShape.CROSS));
        }
        new Marks("heading-for")
                .addWideInY(end, settling.headingFor(), settling.low90(), settling.high90())
                .drawOn(plot, Ink.SECOND, MarkShape.DIAMOND);
        keys.add(Key.interval(
                "Heading for %s, with its 90 %% band %s to %s"
                        .formatted(
                                Rounded.text(settling.headingFor()),
                                Rounded.text(settling.low90()),
                                Rounded.text(settling.high90())),
                Ink.SECOND,
                MarkShape.DIAMOND));
        return new Panel("How the reading settles", plot, 270, keys);
    }

    private MarkShape shape() {
        return settling.course().size() > MANY ? MarkShape.DOT : MarkShape.DISC;
    }

    private Panel against() {
        RangeProbability range = result.range();
        Extent ph = new Extent().add(result.at20().low90()).add(result.at20().high90());
        if (range.lowPh() != null) {
            ph.add(range.lowPh());
        }
        if (range.highPh() != null) {
            ph.add(range.highPh());
        }
        double low = ph.low(0.15);
        double high = ph.high(0.15);
        SymbolAxis row = new SymbolAxis(null, new String[] {"at 20 °C"});
        Chart.dress(row);
        row.setGridBandsVisible(false);
        row.setRange(-0.6, 0.6);
        XYPlot plot = Chart.of(Chart.axis("pH", low, high), row);
        Chart.rangeOfX(
                plot,
                range.lowPh() == null ? low - 1 : range.lowPh(),
                range.highPh() == null ? high + 1 : range.highPh());
        new Marks("at-20")
                .addWideInX(
                        result.at20().ph(), result.at20().low90(), result.at20().high90(), 0)
                .drawOn(plot, Ink.SECOND, MarkShape.SQUARE);
        return new Panel(
                "Against the range",
                plot,
                100,
                List.of(
                        Key.interval("pH at 20 °C, corrected, with its 90 % interval", Ink.SECOND, MarkShape.SQUARE),
                        Key.band(range(), Ink.RANGE, Chart.RANGE_OPACITY, Line.DOTTED)));
    }

    private String range() {
        RangeProbability range = result.range();
        String ends = range.lowPh() == null
                ? "below " + Rounded.text(requireNonNull(range.highPh()))
                : range.highPh() == null
                        ? "above " + Rounded.text(range.lowPh())
                        : Rounded.text(range.lowPh()) + " to " + Rounded.text(range.highPh());
        return "Range, pH %s: %s %% probable".formatted(ends, Rounded.text(Rounded.decimals(100 * range.inRange(), 1)));
    }
}
