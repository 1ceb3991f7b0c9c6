package tunside.http.picture;

import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.jfree.chart.axis.Axis;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.Marker;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.text.TextUtils;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/** Builds charts of numbers against numbers in the look of all pictures. */
final class Chart {
    static final double BAND_OPACITY = 0.25;
    static final double RANGE_OPACITY = 0.2;
    private static final Lettering LABEL = new Lettering(13, false);
    private static final Lettering TICK = new Lettering(12, false);

    static {
        // rotated text stays text as well
        TextUtils.setUseDrawRotatedStringWorkaround(false);
    }

    private Chart() {}

    static XYPlot of(NumberAxis x, ValueAxis y) {
        XYPlot plot = new XYPlot(null, x, y, null);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        plot.setDomainGridlinePaint(Ink.GRID.color());
        plot.setRangeGridlinePaint(Ink.GRID.color());
        plot.setDomainGridlineStroke(Line.GRID.stroke());
        plot.setRangeGridlineStroke(Line.GRID.stroke());
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        dress(plot);
        return plot;
    }

    static void dress(Plot plot) {
        plot.setBackgroundPaint(null);
        plot.setOutlinePaint(Ink.FRAME.color());
        plot.setOutlineStroke(Line.GRID.stroke());
        plot.setInsets(new RectangleInsets(8, 8, 2, 16));
    }

    /** Takes the same room for the y axis as other charts of the picture, so that their x axes lie below each other. */
    static XYPlot alignedAt(double left, XYPlot plot) {
        AxisSpace space = new AxisSpace();
        space.setLeft(left);
        plot.setFixedRangeAxisSpace(space);
        return plot;
    }

    /** An axis with its unit in the label. */
    static NumberAxis axis(String label, double low, double high) {
        NumberAxis axis = new NumberAxis(label);
        axis.setStandardTickUnits(NumberAxis.createStandardTickUnits(Locale.ROOT));
        axis.setRange(low, high);
        dress(axis);
        return axis;
    }

    static void dress(Axis axis) {
        axis.setLabelFont(LABEL);
        axis.setTickLabelFont(TICK);
        axis.setLabelPaint(Ink.TEXT.color());
        axis.setTickLabelPaint(Ink.TEXT.color());
        axis.setAxisLinePaint(Ink.FRAME.color());
        axis.setTickMarkPaint(Ink.FRAME.color());
        axis.setTickMarkStroke(Line.GRID.stroke());
    }

    /** A line without a band. */
    static void line(XYPlot plot, Ink ink, Line line, double[] x, double[] y) {
        curve(plot, ink, line, x, y, y, y);
    }

    /** A straight line across the chart. */
    static void straight(XYPlot plot, Ink ink, Line line, DoubleUnaryOperator y) {
        ValueAxis axis = plot.getDomainAxis();
        double[] x = {axis.getLowerBound(), axis.getUpperBound()};
        line(plot, ink, line, x, new double[] {y.applyAsDouble(x[0]), y.applyAsDouble(x[1])});
    }

    /** A line in its band. */
    static void curve(XYPlot plot, Ink ink, Line line, double[] x, double[] y, double[] low, double[] high) {
        YIntervalSeries series = new YIntervalSeries("curve", false, true);
        for (int i = 0; i < x.length; i++) {
            series.add(x[i], y[i], low[i], high[i]);
        }
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        data.addSeries(series);
        DeviationRenderer renderer = new DeviationRenderer(true, false);
        renderer.setSeriesPaint(0, ink.color());
        renderer.setSeriesFillPaint(0, ink.color());
        renderer.setSeriesStroke(0, line.stroke());
        renderer.setAlpha(java.util.Arrays.equals(low, high) ? 0 : (float) BAND_OPACITY);
        int index = plot.getDatasetCount();
        plot.setDataset(index, data);
        plot.setRenderer(index, renderer);
    }

    /** A range of y, with dotted edges that are seen without colour too. */
    static void rangeOfY(XYPlot plot, double low, double high) {
        plot.addRangeMarker(interval(low, high), Layer.BACKGROUND);
        plot.addRangeMarker(marker(low, Ink.RANGE, Line.DOTTED), Layer.BACKGROUND);
        plot.addRangeMarker(marker(high, Ink.RANGE, Line.DOTTED), Layer.BACKGROUND);
    }

    /** A range of x. */
    static void rangeOfX(XYPlot plot, double low, double high) {
        plot.addDomainMarker(interval(low, high), Layer.BACKGROUND);
        plot.addDomainMarker(marker(low, Ink.RANGE, Line.DOTTED), Layer.BACKGROUND);
        plot.addDomainMarker(marker(high, Ink.RANGE, Line.DOTTED), Layer.BACKGROUND);
    }

    private static Marker interval(double low, double high) {
        return band(low, high, Ink.RANGE);
    }

    static Marker band(double low, double high, Ink ink) {
        Marker marker = new IntervalMarker(low, high, ink.color());
        marker.setAlpha((float) RANGE_OPACITY);
        return marker;
    }

    static Marker marker(double at, Ink ink, Line line) {
        Marker marker = new ValueMarker(at, ink.color(), line.stroke());
        marker.setAlpha(1);
        return marker;
    }
}
