package tunside.electrode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The slope between two neighbouring buffers.
 *
 * @param fromPh lower buffer
 * @param toPh higher buffer
 * @param slopeMvPerPh at the line's temperature
 * @param percent of the ideal slope
 * @param percentUncertainty standard uncertainty of it
 * @param differsFromPrevious whether it differs from the segment below by more than two standard uncertainties
 */
public record SegmentSlope(
        double fromPh,
        double toPh,
        double slopeMvPerPh,
        double percent,
        double percentUncertainty,
        boolean differsFromPrevious) {
    /** Buffers nearer than this count as one. */
    private static final double SAME_BUFFER_PH = 0.3;

    private record Point(double ph, double x, double potentialMv, double varianceMv2) {}

    /** The segments by rising pH; one fewer than there are different buffers. */
    public static List<SegmentSlope> of(CalibrationSession session, CalibrationLine line) {
        List<Point> points = points(session, line);
        double ideal = line.idealMvPerPh();
        List<SegmentSlope> segments = new ArrayList<>();
        for (int i = 1; i < points.size(); i++) {
            Point low = points.get(i - 1);
            Point high = points.get(i);
            double dx = high.x - low.x;
            double slope = (low.potentialMv - high.potentialMv) / dx;
            double percent = 100 * slope / ideal;
            double uncertainty = 100 / ideal * Math.sqrt(low.varianceMv2 + high.varianceMv2) / dx;
            SegmentSlope below = segments.isEmpty() ? null : segments.get(segments.size() - 1);
            boolean differs = below != null
                    && Math.abs(percent - below.percent)
                            > ElectrodeLimits.of("segment-coverage")
                                    * Math.hypot(uncertainty, below.percentUncertainty);
            segments.add(new SegmentSlope(low.ph, high.ph, slope, percent, uncertainty, differs));
        }
        return segments;
    }

    private static List<Point> points(CalibrationSession session, CalibrationLine line) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < session.readings().size(); i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingDouble(line.x()::get));
        List<Point> points = new ArrayList<>();
        List<Integer> group = new ArrayList<>();
        for (int i : order) {
            if (!group.isEmpty() && line.x().get(i) - line.x().get(group.get(0)) > SAME_BUFFER_PH) {
                points.add(point(group, session, line));
                group.clear();
            }
            group.add(i);
        }
        points.add(point(group, session, line));
        return points;
    }

    private static Point point(List<Integer> group, CalibrationSession session, CalibrationLine line) {
        double ph = 0;
        double x = 0;
        double potential = 0;
        double buffer = 0;
        int n = group.size();
        for (int i : group) {
            ph += session.readings().get(i).buffer().ph() / n;
            x += line.x().get(i) / n;
            potential += line.potentialsMv().get(i) / n;
            buffer += line.bufferUncertainties().get(i) * line.slopeMvPerPh() / n;
        }
        double reading = session.uncertainty().potentialMv();
        return new Point(ph, x, potential, buffer * buffer + reading * reading / n);
    }
}
