package tunside.http.picture;

import java.awt.Color;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Everything that a drawing surface must have, brought down to shapes and plain text; there are no images. */
abstract class ShapesAndText extends Graphics2D {
    private AffineTransform transform = new AffineTransform();
    private @Nullable Shape clip;

    /** The clip on the page, or null. */
    @Nullable
    Shape clipOnPage() {
        return clip;
    }

    @Override
    public Graphics create() {
        throw new UnsupportedOperationException("one surface draws the whole picture");
    }

    @Override
    public void dispose() {
        // nothing is held
    }

    // shapes

    @Override
    public void drawLine(int x1, int y1, int x2, int y2) {
        draw(new Line2D.Double(x1, y1, x2, y2));
    }

    @Override
    public void fillRect(int x, int y, int width, int height) {
        fill(new Rectangle(x, y, width, height));
    }

    @Override
    public void clearRect(int x, int y, int width, int height) {
        throw new UnsupportedOperationException("ink is not taken away");
    }

    @Override
    public void drawRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        draw(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void fillRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        fill(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void drawOval(int x, int y, int width, int height) {
        draw(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void fillOval(int x, int y, int width, int height) {
        fill(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void drawArc(int x, int y, int width, int height, int start, int extent) {
        draw(new Arc2D.Double(x, y, width, height, start, extent, Arc2D.OPEN));
    }

    @Override
    public void fillArc(int x, int y, int width, int height, int start, int extent) {
        fill(new Arc2D.Double(x, y, width, height, start, extent, Arc2D.PIE));
    }

    @Override
    public void drawPolyline(int[] xs, int[] ys, int count) {
        draw(path(xs, ys, count, false));
    }

    @Override
    public void drawPolygon(int[] xs, int[] ys, int count) {
        draw(path(xs, ys, count, true));
    }

    @Override
    public void fillPolygon(int[] xs, int[] ys, int count) {
        fill(path(xs, ys, count, true));
    }

    private static Path2D path(int[] xs, int[] ys, int count, boolean closed) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < count; i++) {
            if (i == 0) {
                path.moveTo(xs[i], ys[i]);
            } else {
                path.lineTo(xs[i], ys[i]);
            }
        }
        if (closed && count > 0) {
            path.closePath();
        }
        return path;
    }

    @Override
    public boolean hit(Rectangle rectangle, Shape shape, boolean onStroke) {
        return (onStroke ? getStroke().createStrokedShape(shape) : shape).intersects(rectangle);
    }

    // text

    @Override
    public void drawString(String text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, float x, float y) {
        throw new UnsupportedOperationException("text is plain");
    }

    @Override
    public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
        throw new UnsupportedOperationException("text stays text");
    }

    @Override
    public FontRenderContext getFontRenderContext() {
        return new FontRenderContext(null, true, true);
    }

    // images

    private static UnsupportedOperationException noImages() {
        return new UnsupportedOperationException("there are no images in a picture");
    }

    @Override
    public boolean drawImage(Image image, AffineTransform at, ImageObserver observer) {
        throw noImages();
    }

    @Override
    public void drawImage(BufferedImage image, BufferedImageOp operation, int x, int y) {
        throw noImages();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, ImageObserver observer) {
        throw noImages();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, ImageObserver observer) {
        throw noImages();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, Color background, ImageObserver observer) {
        throw noImages();
    }

    @Override
    public boolean drawImage(
            Image image, int x, int y, int width, int height, Color background, ImageObserver observer) {
        throw noImages();
    }

    @Override
    public boolean drawImage(
            Image image, int x1, int y1, int x2, int y2, int u1, int v1, int u2, int v2, ImageObserver observer) {
        throw noImages();
    }

    @Override
    public boolean drawImage(
            Image image,
            int x1,
            int y1,
            int x2,
            int y2,
            int u1,
            int v1,
            int u2,
            int v2,
            Color background,
            ImageObserver observer) {
        throw noImages();
    }

    @Override
    public void drawRenderedImage(RenderedImage image, AffineTransform at) {
        throw noImages();
    }

    @Override
    public void drawRenderableImage(RenderableImage image, AffineTransform at) {
        throw noImages();
    }

    @Override
    public void copyArea(int x, int y, int width, int height, int dx, int dy) {
        throw noImages();
    }

    // transform

    @Override
    public void translate(int x, int y) {
        transform.translate(x, y);
    }

    @Override
    public void translate(double x, double y) {
        transform.translate(x, y);
    }

    @Override
    public void rotate(double angle) {
        transform.rotate(angle);
    }

    @Override
    public void rotate(double angle, double x, double y) {
        transform.rotate(angle, x, y);
    }

    @Override
    public void scale(double x, double y) {
        transform.scale(x, y);
    }

    @Override
    public void shear(double x, double y) {
        transform.shear(x, y);
    }

    @Override
    public void transform(AffineTransform further) {
        transform.concatenate(further);
    }

    @Override
    public void setTransform(AffineTransform to) {
        transform = new AffineTransform(to);
    }

    @Override
    public AffineTransform getTransform() {
        return new AffineTransform(transform);
    }

    // clip

    @Override
    public @Nullable Rectangle getClipBounds() {
        Shape now = getClip();
        return now == null ? null : now.getBounds();
    }

    @Override
    public void clipRect(int x, int y, int width, int height) {
        clip(new Rectangle(x, y, width, height));
    }

    @Override
    public void setClip(int x, int y, int width, int height) {
        setClip(new Rectangle(x, y, width, height));
    }

    @Override
    public @Nullable Shape getClip() {
        if (clip == null) {
            return null;
        }
        try {
            return transform.createInverse().createTransformedShape(clip);
        } catch (java.awt.geom.NoninvertibleTransformException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void setClip(@Nullable Shape shape) {
        clip = shape == null ? null : transform.createTransformedShape(shape);
    }

    @Override
    public void clip(Shape shape) {
        Shape added = transform.createTransformedShape(shape);
        if (clip == null) {
            clip = added;
        } else {
            Area both = new Area(clip);
            both.intersect(new Area(added));
            clip = both.isRectangular() ? both.getBounds2D() : both;
        }
    }

    // state that has no effect

    @Override
    public void setPaintMode() {
        // there is no other
    }

    @Override
    public void setXORMode(Color color) {
        throw new UnsupportedOperationException("ink covers what lies below");
    }

    @Override
    public void setBackground(Color color) {
        // the picture has its own ground
    }

    @Override
    public Color getBackground() {
        return Ink.PANEL.color();
    }

    @Override
    public @Nullable GraphicsConfiguration getDeviceConfiguration() {
        return null;
    }

    @Override
    public void setRenderingHint(RenderingHints.Key key, Object value) {
        // hints are about pixels
    }

    @Override
    public @Nullable Object getRenderingHint(RenderingHints.Key key) {
        return null;
    }

    @Override
    public void setRenderingHints(Map<?, ?> hints) {
        // hints are about pixels
    }

    @Override
    public void addRenderingHints(Map<?, ?> hints) {
        // hints are about pixels
    }

    @Override
    public RenderingHints getRenderingHints() {
        return new RenderingHints(null);
    }
}
