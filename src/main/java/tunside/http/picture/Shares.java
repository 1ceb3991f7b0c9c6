package tunside.http.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.labels.CategoryItemLabelGenerator;
import org.jfree.chart.labels.ItemLabelAnchor;
import org.jfree.chart.labels.ItemLabelPosition;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.renderer.category.BarRenderer;
import org.jfree.chart.renderer.category.CategoryItemRendererState;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.category.CategoryDataset;
import org.jfree.data.category.DefaultCategoryDataset;
import tunside.http.answer.Rounded;

/** Bars to the left and right of zero, one a component, each with its name and value. */
final class Shares {
    private static final double ROW = 30;
    private static final double AXIS = 52;
    private static final String SERIES = "share";
    private static final Lettering NAME = new Lettering(12, false);

    private final DefaultCategoryDataset bars = new DefaultCategoryDataset();
    private final Extent extent = new Extent().add(0);

    /** @param name shown beside the bar; a second one of the same name gets a number */
    Shares add(String name, double value) {
        String unique = name;
        for (int i = 2; bars.getColumnKeys().contains(unique); i++) {
            unique = name + " (" + i + ")";
        }
        bars.addValue(value, SERIES, unique);
        extent.add(value);
        return this;
    }

    Panel panel(String heading, String unit) {
        CategoryAxis names = new CategoryAxis();
        Chart.dress(names);
        names.setTickLabelFont(NAME);
        names.setLowerMargin(0.02);
        names.setUpperMargin(0.02);
        names.setMaximumCategoryLabelLines(2);
        names.setMaximumCategoryLabelWidthRatio(0.34f);
        names.setTickMarksVisible(false);
        names.setCategoryLabelPositionOffset(10);
        NumberAxis values = Chart.axis(unit, extent.low(0.22), extent.high(0.22));
        CategoryPlot plot = new CategoryPlot(bars, names, values, new Renderer());
        plot.setOrientation(PlotOrientation.HORIZONTAL);
        plot.setRangeAxisLocation(org.jfree.chart.axis.AxisLocation.BOTTOM_OR_LEFT);
        plot.setRangeGridlinePaint(Ink.GRID.color());
        plot.setRangeGridlineStroke(Line.GRID.stroke());
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        Chart.dress(plot);
        ValueMarker zero = new ValueMarker(0, Ink.TEXT.color(), Line.THIN.stroke());
        zero.setAlpha(1);
        plot.addRangeMarker(zero, Layer.FOREGROUND);
        return new Panel(heading, plot, AXIS + ROW * bars.getColumnCount(), java.util.List.of());
    }

    private static final class Renderer extends BarRenderer {
        private static final long serialVersionUID = 1;

        Renderer() {
            setBarPainter(new StandardBarPainter());
            setShadowVisible(false);
            setItemMargin(0);
            setMaximumBarWidth(0.6);
            setDrawBarOutline(true);
            setDefaultOutlinePaint(Ink.TEXT.color());
            setDefaultOutlineStroke(Line.GRID.stroke());
            setDefaultItemLabelsVisible(true);
            setDefaultItemLabelFont(NAME);
            setDefaultItemLabelPaint(Ink.TEXT.color());
            setDefaultItemLabelGenerator(new ValueLabel());
            setItemLabelInsets(new RectangleInsets(4, 4, 4, 4));
            setDefaultPositiveItemLabelPosition(
                    new ItemLabelPosition(ItemLabelAnchor.OUTSIDE3, TextAnchor.CENTER_LEFT));
            setDefaultNegativeItemLabelPosition(
                    new ItemLabelPosition(ItemLabelAnchor.OUTSIDE9, TextAnchor.CENTER_RIGHT));
        }

        @Override
        public java.awt.Paint getItemPaint(int row, int column) {
            return (getPlot().getDataset().getValue(row, column).doubleValue() < 0 ? Ink.GIVES : Ink.FIRST).color();
        }

        @Override
        public void drawItem(
                Graphics2D surface,
                CategoryItemRendererState state,
                Rectangle2D area,
                CategoryPlot plot,
                CategoryAxis names,
                ValueAxis values,
                CategoryDataset data,
                int row,
                int column,
                int pass) {
            SvgSurface svg = (SvgSurface) surface;
            Map<String, String> mark = new LinkedHashMap<>();
            mark.put("series", SERIES);
            mark.put("name", data.getColumnKey(column).toString());
            mark.put("x", ValueLabel.text(data, row, column));
            svg.beginMark(mark);
            super.drawItem(surface, state, area, plot, names, values, data, row, column, pass);
            svg.endMark();
        }
    }

    private static final class ValueLabel implements CategoryItemLabelGenerator {
        static String text(CategoryDataset data, int row, int column) {
            return Rounded.text(data.getValue(row, column).doubleValue());
        }

        @Override
        public String generateLabel(CategoryDataset data, int row, int column) {
            return text(data, row, column);
        }

        @Override
        public String generateRowLabel(CategoryDataset data, int row) {
            return data.getRowKey(row).toString();
        }

        @Override
        public String generateColumnLabel(CategoryDataset data, int column) {
            return data.getColumnKey(column).toString();
        }
    }
}
