package tunside.http.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jspecify.annotations.Nullable;
import tunside.finding.Outcome;
import tunside.http.answer.Rounded;
import tunside.http.dosing.AcidDoseResponse;
import tunside.http.dosing.AcidDoseResponse.AcidDose;
import tunside.http.dosing.AcidDoseResponse.AmountAdded;
import tunside.http.dosing.AcidDoseResponse.ReadingSoFar;
import tunside.http.dosing.AcidDoseResponse.Stage;
import tunside.http.picture.Picture.Paragraph;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.VolumeQuantity;

/** What was read, what is believed now and what to expect after each stage, one below the other, against the range. */
final class AcidDosePicture {
    private static final double ROW = 27;
    private static final double AXIS = 54;

    private final AcidDoseResponse answer;
    private final AcidDose result;
    private final List<String> rows = new ArrayList<>();
    private final List<Key> keys = new ArrayList<>();
    private final Extent extent = new Extent();
    private final Marks readings = new Marks("reading");
    private final Marks now = new Marks("now");
    private final Marks addNow = new Marks("add-now");
    private final Marks later = new Marks("later");
    private final Marks largest = new Marks("largest");

    private AcidDosePicture(AcidDoseResponse answer) {
        this.answer = answer;
        this.result = answer.result();
        extent.add(result.aim().lowPh()).add(result.aim().highPh());
        String since = "";
        for (ReadingSoFar reading : result.readings()) {
            since = addedBefore(reading.added());
            Double ph = reading.ph();
            if (ph != null) {
                reading(reading, ph, since);
                since = "";
            }
        }
        believed(since);
        result.stages().forEach(this::stage);
        if (result.largest() != null) {
            largest.add(result.largest().ph(), rows.size());
            extent.add(result.largest().ph());
            row(
                    "the most",
                    Ink.SECOND,
                    MarkShape.CROSS,
                    false,
                    "The most that may be added, %s, would lead to pH %s"
                            .formatted(
                                    amount(
                                            result.largest().volume(),
                                            result.largest().mass()),
                                    Rounded.text(result.largest().ph())));
        }
    }

    static Picture of(AcidDoseResponse answer) {
        return new AcidDosePicture(answer).picture();
    }

    private void reading(ReadingSoFar reading, double ph, String since) {
        readings.add(ph, rows.size());
        extent.add(ph);
        int number = rows.size() + 1;
        row(
                reading.measured() ? "reading " + number : "by report",
                Ink.FIRST,
                MarkShape.DISC,
                false,
                (reading.measured() ? "Reading " + number : "By the water report") + ": pH " + Rounded.text(ph)
                        + since);
    }

    private void believed(String since) {
        now.addWideInX(result.now().ph(), result.now().low90(), result.now().high90(), rows.size());
        extent.add(result.now().low90()).add(result.now().high90());
        row(
                "now",
                Ink.FIRST,
                MarkShape.DIAMOND,
                true,
                "True pH now: %s, 90 %% interval %s to %s%s"
                        .formatted(
                                Rounded.text(result.now().ph()),
                                Rounded.text(result.now().low90()),
                                Rounded.text(result.now().high90()),
                                since));
    }

    private void stage(Stage stage) {
        boolean first = result.addNow() != null && stage.equals(result.stages().get(0));
        int number = later.size() + 1;
        (first ? addNow : later).addWideInX(stage.expectedPh(), stage.low90(), stage.high90(), rows.size());
        extent.add(stage.low90()).add(stage.high90());
        row(
                first ? "add now" : "later " + number,
                Ink.SECOND,
                first ? MarkShape.SQUARE : MarkShape.OPEN_SQUARE,
                true,
                "%s: pH %s expected, 90 %% interval %s to %s, risk of passing the range %s %%"
                        .formatted(
                                (first ? "Add %s now" : "Later " + number + " (if the readings agree), %s")
                                        .formatted(amount(stage.volume(), stage.mass())),
                                Rounded.text(stage.expectedPh()),
                                Rounded.text(stage.low90()),
                                Rounded.text(stage.high90()),
                                Rounded.text(Rounded.decimals(100 * stage.overshootProbability(), 1))));
    }

    private void row(String name, Ink ink, MarkShape shape, boolean interval, String meaning) {
        rows.add(name);
        keys.add(interval ? Key.interval(meaning, ink, shape) : Key.mark(meaning, ink, shape));
    }

    private Picture picture() {
        String title = title();
        String lead = result.advice() + inAll();
        List<Paragraph> caption = Caption.of(answer.checks(), answer.safety(), answer.basis());
        StringJoiner words = new StringJoiner(". ", "", ".");
        words.add(title).add(lead).add(range()).add(target());
        keys.forEach(key -> words.add(key.meaning()));
        Panel panel = panel();
        return new Picture(title, lead, List.of(panel), caption, words + " " + Caption.inWords(caption));
    }

    private Panel panel() {
        SymbolAxis steps = new SymbolAxis(null, rows.toArray(String[]::new));
        Chart.dress(steps);
        steps.setGridBandsVisible(false);
        steps.setInverted(true);
        steps.setRange(-0.6, rows.size() - 0.4);
        XYPlot plot = Chart.of(Chart.axis("pH", extent.low(0.08), extent.high(0.08)), steps);
        Chart.rangeOfX(plot, result.aim().lowPh(), result.aim().highPh());
        plot.addDomainMarker(Chart.marker(result.aim().targetPh(), Ink.THIRD, Line.DASH_DOT), Layer.BACKGROUND);
        readings.drawOn(plot, Ink.FIRST, MarkShape.DISC);
        now.drawOn(plot, Ink.FIRST, MarkShape.DIAMOND);
        addNow.drawOn(plot, Ink.SECOND, MarkShape.SQUARE);
        later.drawOn(plot, Ink.SECOND, MarkShape.OPEN_SQUARE);
        largest.drawOn(plot, Ink.SECOND, MarkShape.CROSS);
        List<Key> legend = new ArrayList<>(keys);
        legend.add(Key.line(target(), Ink.THIRD, Line.DASH_DOT));
        legend.add(Key.band(range(), Ink.RANGE, Chart.RANGE_OPACITY, Line.DOTTED));
        return new Panel("pH step by step", plot, AXIS + ROW * rows.size(), legend);
    }

    private String title() {
        if (result.addNow() != null) {
            return "%s %s now"
                    .formatted(
                            result.diluteFirst() == null ? "Add" : "Dilute the acid, then add",
                            amount(result.addNow().volume(), result.addNow().mass()));
        }
        boolean stopped = answer.checks().stream().anyMatch(check -> check.outcome() == Outcome.STOP);
        return stopped ? "Stop: add nothing now" : "Add nothing now";
    }

    private String inAll() {
        return result.total() == null
                ? ""
                : " In all it may take %s, with 90 %% probability between %s and %s."
                        .formatted(
                                amount(result.total().volume(), result.total().mass()),
                                amount(null, result.total().low90()),
                                amount(null, result.total().high90()));
    }

    private String target() {
        return "Target, pH " + Rounded.text(result.aim().targetPh());
    }

    private String range() {
        return "Range that is good enough, pH %s to %s"
                .formatted(
                        Rounded.text(result.aim().lowPh()),
                        Rounded.text(result.aim().highPh()));
    }

    private static String addedBefore(List<AmountAdded> added) {
        StringJoiner amounts = new StringJoiner(" and ", ", after ", "");
        added.forEach(one -> amounts.add(amount(one.volume(), one.mass()) + " of " + one.name()));
        return added.isEmpty() ? "" : amounts.toString();
    }

    private static String amount(@Nullable VolumeQuantity volume, MassQuantity mass) {
        return volume != null
                ? Rounded.text(volume.value()) + " " + volume.unit().symbol()
                : Rounded.text(mass.value()) + " " + mass.unit().symbol();
    }
}
