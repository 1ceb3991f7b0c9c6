package tunside.http.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.entity.EntityCollection;
import org.jfree.chart.plot.CrosshairState;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.data.xy.IntervalXYDataset;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import tunside.http.answer.Rounded;

/** Points of a chart, with whiskers where they have an interval. Each mark carries the values that it stands for. */
final class Marks {
    private final XYIntervalSeries series;
    private final XYIntervalSeriesCollection points = new XYIntervalSeriesCollection();
    private boolean wideInX;
    private boolean wideInY;

    /** @param name of the series, as the marks carry it */
    Marks(String name) {
        series = new XYIntervalSeries(name, false, true);
        points.addSeries(series);
    }

    Marks add(double x, double y) {
        series.add(x, x, x, y, y, y);
        return this;
    }

    /** A point with an interval of x. */
    Marks addWideInX(double x, double low, double high, double y) {
        wideInX = true;
        series.add(x, low, high, y, y, y);
        return this;
    }

    /** A point with an interval of y. */
    Marks addWideInY(double x, double y, double low, double high) {
        wideInY = true;
        series.add(x, x, x, y, low, high);
        return this;
    }

    int size() {
        return series.getItemCount();
    }

    /** Puts them on a chart, above what is there. */
    void drawOn(XYPlot plot, Ink ink, MarkShape shape) {
        int index = plot.getDatasetCount();
        plot.setDataset(index, points);
        plot.setRenderer(index, new Renderer(ink, shape, wideInX, wideInY));
    }

    private static final class Renderer extends XYErrorRenderer {
        private static final long serialVersionUID = 1;

        Renderer(Ink ink, MarkShape shape, boolean wideInX, boolean wideInY) {
            setDrawXError(wideInX);
            setDrawYError(wideInY);
            setErrorPaint(ink.color());
            setErrorStroke(Line.THIN.stroke());
            setCapLength(8);
            setDefaultLinesVisible(false);
            setDefaultShapesVisible(true);
            setSeriesShape(0, shape.shape());
            setSeriesPaint(0, ink.color());
            setUseFillPaint(true);
            setSeriesFillPaint(0, (shape.filled() ? ink : Ink.PANEL).color());
            setDrawOutlines(true);
            setUseOutlinePaint(true);
            setSeriesOutlinePaint(0, ink.color());
            setSeriesOutlineStroke(0, Line.MARK.stroke());
        }

        @Override
        protected void drawSecondaryPass(
                Graphics2D surface,
                XYPlot plot,
                XYDataset dataset,
                int pass,
                int series,
                int item,
                ValueAxis xAxis,
                Rectangle2D area,
                ValueAxis yAxis,
                CrosshairState crosshair,
                EntityCollection entities) {
            SvgSurface svg = (SvgSurface) surface;
            svg.beginMark(values((IntervalXYDataset) dataset, series, item));
            super.drawSecondaryPass(
                    surface, plot, dataset, pass, series, item, xAxis, area, yAxis, crosshair, entities);
            svg.endMark();
        }

        private Map<String, String> values(IntervalXYDataset data, int series, int item) {
            Map<String, String> values = new LinkedHashMap<>();
            values.put("series", data.getSeriesKey(series).toString());
            values.put("x", Rounded.text(data.getXValue(series, item)));
            values.put("y", Rounded.text(data.getYValue(series, item)));
            if (getDrawXError()) {
                values.put("low", Rounded.text(data.getStartXValue(series, item)));
                values.put("high", Rounded.text(data.getEndXValue(series, item)));
            }
            if (getDrawYError()) {
                values.put("low", Rounded.text(data.getStartYValue(series, item)));
                values.put("high", Rounded.text(data.getEndYValue(series, item)));
            }
            return values;
        }
    }
}
