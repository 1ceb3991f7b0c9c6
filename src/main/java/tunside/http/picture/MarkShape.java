package tunside.http.picture;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** Markers that are told apart by form. */
enum MarkShape {
    DISC(new Ellipse2D.Double(-5, -5, 10, 10), true),
    DOT(new Ellipse2D.Double(-2.5, -2.5, 5, 5), true),
    RING(new Ellipse2D.Double(-5, -5, 10, 10), false),
    SQUARE(new Rectangle2D.Double(-5, -5, 10, 10), true),
    OPEN_SQUARE(new Rectangle2D.Double(-5, -5, 10, 10), false),
    DIAMOND(polygon(0, -7, 7, 0, 0, 7, -7, 0), true),
    CROSS(cross(), false);

    private final Shape shape;
    private final boolean filled;

    MarkShape(Shape shape, boolean filled) {
        this.shape = shape;
        this.filled = filled;
    }

    Shape shape() {
        return shape;
    }

    /** Filled with its ink; else with the ground. */
    boolean filled() {
        return filled;
    }

    private static Shape polygon(double... at) {
        Path2D path = new Path2D.Double();
        path.moveTo(at[0], at[1]);
        for (int i = 2; i < at.length; i += 2) {
            path.lineTo(at[i], at[i + 1]);
        }
        path.closePath();
        return path;
    }

    private static Shape cross() {
        Path2D path = new Path2D.Double();
        path.moveTo(-5, -5);
        path.lineTo(5, 5);
        path.moveTo(-5, 5);
        path.lineTo(5, -5);
        return path;
    }
}
