package tunside.http.picture;

import java.util.List;
import java.util.StringJoiner;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import tunside.electrode.Calibration;
import tunside.electrode.StraightLine;
import tunside.http.answer.Rounded;
import tunside.http.calibration.CalibrationEvaluationResponse;
import tunside.http.calibration.CalibrationEvaluationResponse.BufferResidual;
import tunside.http.calibration.CalibrationEvaluationResponse.CalibrationEvaluationResult;
import tunside.http.picture.Picture.Paragraph;
import tunside.quantity.Interval90;

/** An electrode's line through its buffers, beside the ideal one; and how far each reading is off the line. */
final class CalibrationPicture {
    private static final double AROUND_PH = 0.4;
    private static final int STEPS = 60;
    private static final double Y_AXIS = 62;

    private final CalibrationEvaluationResponse answer;
    private final CalibrationEvaluationResult result;
    private final StraightLine line;
    private final double lowestPh;
    private final double highestPh;

    private CalibrationPicture(CalibrationEvaluationResponse answer) {
        this.answer = answer;
        this.result = answer.result();
        this.line = new StraightLine(
                result.offset().value(),
                -result.slope().mvPerPh(),
                result.line().offsetVariance(),
                result.line().slopeVariance(),
                -result.line().slopeOffsetCovariance(),
                result.line().chiSquared(),
                result.line().degreesOfFreedom());
        double low = result.expected().ph();
        double high = result.expected().ph();
        for (BufferResidual reading : result.readings()) {
            low = Math.min(low, reading.bufferPh());
            high = Math.max(high, reading.bufferPh());
        }
        lowestPh = low - AROUND_PH;
        highestPh = high + AROUND_PH;
    }

    static Picture of(CalibrationEvaluationResponse answer) {
        return new CalibrationPicture(answer).picture();
    }

    private Picture picture() {
        String title = switch (result.verdict()) {
            case FIT -> "Electrode fit to use";
            case FIT_WITH_CARE -> "Electrode fit, with care";
            case UNFIT -> "Electrode unfit: do not dose on it";
        };
        String lead = "Slope %s %% of the ideal, offset %s mV at pH 7, at %s °C. A reading at pH %s %s."
                .formatted(
                        Rounded.text(result.slope().percentOfIdeal()),
                        Rounded.text(result.offset().value()),
                        Rounded.text(result.temperature().value()),
                        Rounded.text(result.expected().ph()),
                        result.expected().standardUncertainty() == null
                                ? "is worth nothing"
                                : "has a standard uncertainty of "
                                        + Rounded.text(result.expected().standardUncertainty()));
        List<Paragraph> caption = Caption.of(answer.checks(), answer.safety(), answer.basis());
        return new Picture(
                title,
                lead,
                List.of(potentials(), residuals()),
                caption,
                "%s. %s %s %s".formatted(title, lead, readingsInWords(), Caption.inWords(caption)));
    }

    private String readingsInWords() {
        StringJoiner words = new StringJoiner("; ", "Readings: ", ".");
        for (BufferResidual reading : result.readings()) {
            words.add("%s mV in buffer %s of pH %s, %s mV off the line"
                    .formatted(
                            Rounded.text(reading.potential().value()),
                            reading.buffer(),
                            Rounded.text(reading.bufferPh()),
                            Rounded.text(reading.residual().value())));
        }
        return words.toString();
    }

    private Panel potentials() {
        Extent extent = new Extent();
        result.readings().forEach(reading -> extent.add(reading.potential().value()));
        for (double ph : new double[] {lowestPh, highestPh}) {
            extent.add(ideal(ph));
            extent.add(line.at(x(ph)));
        }
        NumberAxis ph = Chart.axis("pH", lowestPh, highestPh);
        XYPlot plot =
                Chart.alignedAt(Y_AXIS, Chart.of(ph, Chart.axis("Potential, mV", extent.low(0.05), extent.high(0.05))));
        plot.addDomainMarker(expected(), Layer.BACKGROUND);
        Chart.straight(plot, Ink.SECOND, Line.DASHED, this::ideal);
        band(plot, true);
        Marks readings = new Marks("reading");
        result.readings()
                .forEach(reading ->
                        readings.add(reading.bufferPh(), reading.potential().value()));
        readings.drawOn(plot, Ink.FIRST, MarkShape.DISC);
        new Marks("expected")
                .add(result.expected().ph(), line.at(x(result.expected().ph())))
                .drawOn(plot, Ink.THIRD, MarkShape.DIAMOND);
        return new Panel(
                "Potential in each buffer",
                plot,
                270,
                List.of(
                        Key.mark("Reading in a buffer", Ink.FIRST, MarkShape.DISC),
                        Key.line(
                                "This electrode's line, %s mV per pH"
                                        .formatted(Rounded.text(result.slope().mvPerPh())),
                                Ink.FIRST,
                                Line.MAIN),
                        Key.line(
                                "Ideal line, %s mV per pH"
                                        .formatted(Rounded.text(result.slope().idealMvPerPh())),
                                Ink.SECOND,
                                Line.DASHED),
                        Key.line(
                                "Expected pH of the sample, %s"
                                        .formatted(
                                                Rounded.text(result.expected().ph())),
                                Ink.THIRD,
                                Line.DASH_DOT)));
    }

    /** The same seen closely: the band is too narrow to be seen beside the whole line. */
    private Panel residuals() {
        Extent extent = new Extent();
        extent.add(0);
        result.readings().forEach(reading -> extent.add(reading.residual().value()));
        for (double ph : new double[] {lowestPh, highestPh}) {
            extent.add(Interval90.HALF_WIDTH * line.standardUncertaintyAt(x(ph)));
            extent.add(-Interval90.HALF_WIDTH * line.standardUncertaintyAt(x(ph)));
        }
        XYPlot plot = Chart.alignedAt(
                Y_AXIS,
                Chart.of(
                        Chart.axis("pH", lowestPh, highestPh),
                        Chart.axis("Off the line, mV", extent.low(0.1), extent.high(0.1))));
        plot.addDomainMarker(expected(), Layer.BACKGROUND);
        band(plot, false);
        Marks residuals = new Marks("residual");
        result.readings()
                .forEach(reading ->
                        residuals.add(reading.bufferPh(), reading.residual().value()));
        residuals.drawOn(plot, Ink.FIRST, MarkShape.DISC);
        return new Panel(
                "How far each reading is off the line",
                plot,
                190,
                List.of(Key.band(
                        "The line lies in here with a probability of 90 %", Ink.FIRST, Chart.BAND_OPACITY, null)));
    }

    private org.jfree.chart.plot.Marker expected() {
        return Chart.marker(result.expected().ph(), Ink.THIRD, Line.DASH_DOT);
    }

    private void band(XYPlot plot, boolean absolute) {
        double[] x = new double[STEPS + 1];
        double[] y = new double[STEPS + 1];
        double[] low = new double[STEPS + 1];
        double[] high = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            x[i] = lowestPh + (highestPh - lowestPh) * i / STEPS;
            y[i] = absolute ? line.at(x(x[i])) : 0;
            double half = Interval90.HALF_WIDTH * line.standardUncertaintyAt(x(x[i]));
            low[i] = y[i] - half;
            high[i] = y[i] + half;
        }
        Chart.curve(plot, Ink.FIRST, Line.MAIN, x, y, low, high);
    }

    private double ideal(double ph) {
        return -result.slope().idealMvPerPh() * x(ph);
    }

    private static double x(double ph) {
        return ph - Calibration.OFFSET_PH;
    }
}
