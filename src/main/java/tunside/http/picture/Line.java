package tunside.http.picture;

import java.awt.BasicStroke;

/** How a line is drawn; lines of one chart differ in this as well as in ink. */
enum Line {
    MAIN(2.4f),
    THIN(1.6f),
    MARK(1.6f),
    GRID(1),
    DASHED(2, 9, 5),
    DOTTED(1.6f, 2, 3),
    DASH_DOT(1.8f, 10, 4, 2, 4);

    private final BasicStroke stroke;

    Line(float width, float... dashes) {
        stroke = dashes.length == 0
                ? new BasicStroke(width)
                : new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, dashes, 0);
    }

    BasicStroke stroke() {
        return stroke;
    }
}
