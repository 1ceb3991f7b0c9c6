package tunside.http.picture;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Paint;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.io.StringWriter;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.StringJoiner;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Rounded;

/** Writes what a chart draws as SVG: shapes with the class of their ink, text as text. */
final class SvgSurface extends ShapesAndText {
    private static final XMLOutputFactory FACTORY = XMLOutputFactory.newFactory();

    private final StringWriter text = new StringWriter();
    private final XMLStreamWriter xml;
    private final Map<String, String> clips = new LinkedHashMap<>();
    private final String idPrefix;
    private Color color = Ink.TEXT.color();
    private Stroke stroke = new BasicStroke(1);
    private Composite composite = AlphaComposite.SrcOver;
    private Lettering lettering = new Lettering(12, false);

    /**
     * Opens a picture.
     *
     * @param idPrefix of every id in it
     * @param description what a reader who does not see it gets to know
     */
    SvgSurface(String idPrefix, String title, String description, double width, double height) {
        this.idPrefix = idPrefix;
        try {
            xml = FACTORY.createXMLStreamWriter(text);
            xml.writeStartDocument("UTF-8", "1.0");
            xml.writeStartElement("svg");
            xml.writeDefaultNamespace("http://www.w3.org/2000/svg");
            attribute("viewBox", "0 0 %s %s".formatted(number(width), number(height)));
            attribute("width", number(width));
            attribute("height", number(height));
            attribute("class", "picture");
            attribute("font-family", "sans-serif");
            attribute("role", "img");
            attribute("aria-labelledby", idPrefix + "-title");
            attribute("aria-describedby", idPrefix + "-desc");
            element("title", idPrefix + "-title", title);
            element("desc", idPrefix + "-desc", description);
            xml.writeStartElement("style");
            xml.writeCharacters(Ink.styleSheet());
            xml.writeEndElement();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        setPaint(Ink.PANEL.color());
        fill(new Rectangle2D.Double(0, 0, width, height));
    }

    /** Closes the picture. */
    String finish() {
        try {
            xml.writeEndDocument();
            xml.close();
            return text.toString();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What is drawn until {@link #endMark} is one mark and carries these values. */
    void beginMark(Map<String, String> values) {
        try {
            xml.writeStartElement("g");
            for (Map.Entry<String, String> value : values.entrySet()) {
                attribute("data-" + value.getKey(), value.getValue());
            }
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    void endMark() {
        try {
            xml.writeEndElement();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Text that begins at a place. */
    void write(String what, double x, double y, Lettering with, Ink ink) {
        setFont(with);
        setPaint(ink.color());
        text(what, x, y, "start");
    }

    /** Text that a chart has set: its middle stays where the chart meant it, whatever the reader's typeface. */
    @Override
    public void drawString(String what, float x, float y) {
        text(what, x + lettering.width(what) / 2, y, "middle");
    }

    private void text(String what, double x, double y, String anchor) {
        AffineTransform at = getTransform();
        at.translate(x, y);
        try {
            xml.writeStartElement("text");
            if (at.getShearX() == 0 && at.getScaleX() == 1) {
                attribute("x", number(at.getTranslateX()));
                attribute("y", number(at.getTranslateY()));
            } else {
                double degrees = Math.toDegrees(Math.atan2(at.getShearY(), at.getScaleX()));
                attribute(
                        "transform",
                        "translate(%s %s) rotate(%s)"
                                .formatted(number(at.getTranslateX()), number(at.getTranslateY()), number(degrees)));
            }
            attribute("text-anchor", anchor);
            attribute("font-size", number(lettering.getSize2D()));
            if (lettering.isBold()) {
                attribute("font-weight", "bold");
            }
            ink("fill");
            xml.writeCharacters(legal(what));
            xml.writeEndElement();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void draw(Shape shape) {
        double half = stroke instanceof BasicStroke basic ? basic.getLineWidth() / 2 : 0;
        path(shape, half, () -> {
            attribute("fill", "none");
            ink("stroke");
            if (stroke instanceof BasicStroke basic) {
                attribute("stroke-width", number(basic.getLineWidth()));
                if (basic.getDashArray() != null) {
                    StringJoiner dashes = new StringJoiner(" ");
                    for (float dash : basic.getDashArray()) {
                        dashes.add(number(dash));
                    }
                    attribute("stroke-dasharray", dashes.toString());
                }
            }
        });
    }

    @Override
    public void fill(Shape shape) {
        path(shape, 0, () -> ink("fill"));
    }

    private interface Attributes {
        void write() throws XMLStreamException;
    }

    private void path(Shape shape, double around, Attributes attributes) {
        String path = pathOf(shape, getTransform());
        if (path.isEmpty()) {
            return;
        }
        Rectangle2D bounds = getTransform().createTransformedShape(shape).getBounds2D();
        Shape clip = clipOnPage();
        Shape cutting = clip == null
                        || clip.contains(
                                bounds.getX() - around,
                                bounds.getY() - around,
                                bounds.getWidth() + 2 * around,
                                bounds.getHeight() + 2 * around)
                ? null
                : clip;
        try {
            String clipId = cutting == null ? null : clipId(cutting);
            xml.writeEmptyElement("path");
            attribute("d", path);
            attributes.write();
            if (clipId != null) {
                attribute("clip-path", "url(#" + clipId + ")");
            }
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    private String clipId(Shape clip) throws XMLStreamException {
        String path = pathOf(clip, null);
        String known = clips.get(path);
        if (known != null) {
            return known;
        }
        String id = idPrefix + "-clip" + clips.size();
        clips.put(path, id);
        xml.writeStartElement("clipPath");
        attribute("id", id);
        xml.writeEmptyElement("path");
        attribute("d", path);
        xml.writeEndElement();
        return id;
    }

    private void ink(String property) throws XMLStreamException {
        Ink ink = Ink.of(color);
        boolean fill = property.equals("fill");
        attribute("class", fill ? ink.fillClass() : ink.strokeClass());
        double opacity = color.getAlpha() / 255.0 * (composite instanceof AlphaComposite alpha ? alpha.getAlpha() : 1);
        if (opacity < 1) {
            attribute(property + "-opacity", number(opacity));
        }
    }

    private static String pathOf(Shape shape, @Nullable AffineTransform transform) {
        StringJoiner path = new StringJoiner("");
        double[] at = new double[6];
        for (PathIterator pieces = shape.getPathIterator(transform); !pieces.isDone(); pieces.next()) {
            switch (pieces.currentSegment(at)) {
                case PathIterator.SEG_MOVETO -> path.add("M" + points(at, 1));
                case PathIterator.SEG_LINETO -> path.add("L" + points(at, 1));
                case PathIterator.SEG_QUADTO -> path.add("Q" + points(at, 2));
                case PathIterator.SEG_CUBICTO -> path.add("C" + points(at, 3));
                default -> path.add("Z");
            }
        }
        return path.toString();
    }

    private static String points(double[] at, int count) {
        StringJoiner points = new StringJoiner(" ");
        for (int i = 0; i < 2 * count; i++) {
            points.add(number(at[i]));
        }
        return points.toString();
    }

    private void element(String name, String id, String content) throws XMLStreamException {
        xml.writeStartElement(name);
        attribute("id", id);
        xml.writeCharacters(legal(content));
        xml.writeEndElement();
    }

    private void attribute(String name, String value) throws XMLStreamException {
        xml.writeAttribute(name, legal(value));
    }

    /** Without the characters that XML cannot carry. */
    private static String legal(String content) {
        StringBuilder legal = new StringBuilder();
        content.codePoints()
                .map(c -> c == '\t'
                                || c == '\n'
                                || (c >= 0x20 && c <= 0xd7ff)
                                || (c >= 0xe000 && c <= 0xfffd)
                                || c >= 0x10000
                        ? c
                        : 0xfffd)
                .forEach(legal::appendCodePoint);
        return legal.toString();
    }

    private static String number(double value) {
        return Rounded.text(Rounded.decimals(value, 2));
    }

    // state

    @Override
    public void setPaint(Paint paint) {
        if (paint instanceof Color plain) {
            color = plain;
        }
    }

    @Override
    public Paint getPaint() {
        return color;
    }

    @Override
    public void setColor(Color plain) {
        setPaint(plain);
    }

    @Override
    public Color getColor() {
        return color;
    }

    @Override
    public void setStroke(Stroke with) {
        stroke = with;
    }

    @Override
    public Stroke getStroke() {
        return stroke;
    }

    @Override
    public void setComposite(Composite with) {
        composite = with;
    }

    @Override
    public Composite getComposite() {
        return composite;
    }

    @Override
    public void setFont(Font font) {
        lettering = lettering(font);
    }

    @Override
    public Font getFont() {
        return lettering;
    }

    @Override
    public FontMetrics getFontMetrics(Font font) {
        return lettering(font).metrics();
    }

    private static Lettering lettering(Font font) {
        return font instanceof Lettering known ? known : new Lettering(font.getSize(), font.isBold());
    }
}
