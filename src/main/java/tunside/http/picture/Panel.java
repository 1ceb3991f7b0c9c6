package tunside.http.picture;

import java.util.List;
import org.jfree.chart.plot.Plot;

/**
 * One chart of a picture.
 *
 * @param heading above it
 * @param plot the chart
 * @param height of the chart, axes included
 * @param keys its legend
 */
record Panel(String heading, Plot plot, double height, List<Key> keys) {}
