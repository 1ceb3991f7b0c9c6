package tunside.http.picture;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.jspecify.annotations.Nullable;

/** One line of a legend: a sample, drawn as it is drawn in the chart, and what it means. */
record Key(String meaning, Sample sample) {
    /** Draws a sample between two places on a line. */
    interface Sample {
        void draw(SvgSurface surface, double left, double right, double middle);
    }

    static Key line(String meaning, Ink ink, Line line) {
        return new Key(meaning, (surface, left, right, middle) -> {
            surface.setPaint(ink.color());
            surface.setStroke(line.stroke());
            surface.draw(new Line2D.Double(left, middle, right, middle));
        });
    }

    static Key mark(String meaning, Ink ink, MarkShape mark) {
        return new Key(meaning, (surface, left, right, middle) -> {
            Shape shape = AffineTransform.getTranslateInstance((left + right) / 2, middle)
                    .createTransformedShape(mark.shape());
            surface.setStroke(Line.MARK.stroke());
            surface.setPaint((mark.filled() ? ink : Ink.PANEL).color());
            surface.fill(shape);
            surface.setPaint(ink.color());
            surface.draw(shape);
        });
    }

    /** A mark with its whiskers. */
    static Key interval(String meaning, Ink ink, MarkShape mark) {
        return new Key(meaning, (surface, left, right, middle) -> {
            line(meaning, ink, Line.THIN).sample.draw(surface, left, right, middle);
            mark(meaning, ink, mark).sample.draw(surface, left, right, middle);
        });
    }

    static Key band(String meaning, Ink ink, double opacity, @Nullable Line edge) {
        return new Key(meaning, (surface, left, right, middle) -> {
            Rectangle2D box = new Rectangle2D.Double(left, middle - 6, right - left, 12);
            surface.setComposite(java.awt.AlphaComposite.SrcOver.derive((float) opacity));
            surface.setPaint(ink.color());
            surface.fill(box);
            surface.setComposite(java.awt.AlphaComposite.SrcOver);
            if (edge != null) {
                surface.setStroke(edge.stroke());
                surface.draw(new Line2D.Double(left, middle - 6, right, middle - 6));
                surface.draw(new Line2D.Double(left, middle + 6, right, middle + 6));
            }
        });
    }
}
