package tunside.http.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.jfree.chart.plot.XYPlot;
import tunside.http.answer.Rounded;
import tunside.http.mash.MashPredictionResponse;
import tunside.http.mash.MashPredictionResponse.MashPredictionResult;
import tunside.http.mash.MashPredictionResponse.ProtonContribution;
import tunside.http.mash.MashPredictionResponse.TitrationStep;
import tunside.http.picture.Picture.Paragraph;
import tunside.mash.PhRange;
import tunside.mash.PhRanges;

/** Where a mash lands, what acid or base would do to it, and what each component contributes. */
final class MashPredictionPicture {
    private MashPredictionPicture() {}

    static Picture of(MashPredictionResponse answer) {
        MashPredictionResult result = answer.result();
        PhRange range = PhRanges.acceptedMash();
        String title = "Mash predicted at pH " + Rounded.text(result.ph());
        String lead =
                "90 %% interval %s to %s, standard uncertainty %s; of a sample cooled to 20 to 26 °C. Accepted range: %s to %s."
                        .formatted(
                                Rounded.text(result.interval90().low()),
                                Rounded.text(result.interval90().high()),
                                Rounded.text(result.standardUncertainty()),
                                Rounded.text(range.lowPh().orElseThrow()),
                                Rounded.text(range.highPh().orElseThrow()));
        List<Paragraph> caption = Caption.of(answer.checks(), answer.safety(), answer.basis());
        return new Picture(
                title,
                lead,
                panels(result, range),
                caption,
                "%s. %s %s %s".formatted(title, lead, inWords(result), Caption.inWords(caption)));
    }

    private static List<Panel> panels(MashPredictionResult result, PhRange range) {
        List<Panel> panels = new ArrayList<>();
        if (result.curve() != null) {
            panels.add(VariedPh.of(result.curve(), range));
        }
        panels.add(titration(result, range));
        panels.add(shares(result));
        return panels;
    }

    private static String inWords(MashPredictionResult result) {
        StringJoiner shares = new StringJoiner("; ", "Protons taken up in mEq: ", ".");
        result.contributions().forEach(part -> shares.add(name(part) + " " + Rounded.text(part.meq())));
        StringJoiner steps = new StringJoiner("; ", " Strong acid from the predicted pH, negative for base: ", ".");
        result.titration()
                .forEach(step ->
                        steps.add("%s mEq to pH %s".formatted(Rounded.text(step.acidMeq()), Rounded.text(step.ph()))));
        return shares.toString() + steps + (result.curve() == null ? "" : VariedPh.inWords(result.curve()));
    }

    private static Panel titration(MashPredictionResult result, PhRange range) {
        Extent meq = new Extent().add(0);
        Extent ph = new Extent()
                .add(result.interval90().low())
                .add(result.interval90().high());
        double[] x = new double[result.titration().size()];
        double[] y = new double[x.length];
        Marks steps = new Marks("titration");
        for (int i = 0; i < x.length; i++) {
            TitrationStep step = result.titration().get(i);
            x[i] = step.acidMeq();
            y[i] = step.ph();
            steps.add(x[i], y[i]);
            meq.add(x[i]);
            ph.add(y[i]);
        }
        XYPlot plot = Chart.of(
                Chart.axis("Strong acid added, mEq (negative: base)", meq.low(0.04), meq.high(0.04)),
                Chart.axis("pH of the cooled sample", ph.low(0.05), ph.high(0.05)));
        Chart.rangeOfY(plot, range.lowPh().orElseThrow(), range.highPh().orElseThrow());
        Chart.line(plot, Ink.FIRST, Line.MAIN, x, y);
        steps.drawOn(plot, Ink.FIRST, MarkShape.DOT);
        new Marks("prediction")
                .addWideInY(
                        0,
                        result.ph(),
                        result.interval90().low(),
                        result.interval90().high())
                .drawOn(plot, Ink.SECOND, MarkShape.DIAMOND);
        return new Panel(
                "What acid or base would do",
                plot,
                290,
                List.of(
                        Key.interval("Prediction with its 90 % interval", Ink.SECOND, MarkShape.DIAMOND),
                        Key.line("This mash with more acid or base", Ink.FIRST, Line.MAIN),
                        Key.band("Accepted range of a mash", Ink.RANGE, Chart.RANGE_OPACITY, Line.DOTTED)));
    }

    private static Panel shares(MashPredictionResult result) {
        Shares shares = new Shares();
        result.contributions().forEach(part -> shares.add(name(part), part.meq()));
        return shares.panel(
                "What each component takes up; negative: gives", "Protons taken up at the predicted pH, mEq");
    }

    private static String name(ProtonContribution part) {
        return part.subject().isEmpty()
                ? part.kind()
                : part.kind() + ": " + part.subject().replace('-', ' ');
    }
}
