package tunside.http.picture;

import java.awt.geom.Rectangle2D;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/**
 * A picture of an answer: what it says in large letters, charts, and what must be read before acting on it. It is narrow,
 * so that its letters can be read on a phone.
 *
 * @param title what the answer says
 * @param lead the numbers behind it, in words
 * @param panels its charts
 * @param caption paragraphs below
 * @param description all of it in words, for a reader who does not see it
 */
record Picture(String title, String lead, List<Panel> panels, List<Paragraph> caption, String description) {
    private static final double WIDTH = 480;
    private static final double MARGIN = 16;
    private static final double SAMPLE = 34;
    private static final Lettering TITLE = new Lettering(19, true);
    private static final Lettering LEAD = new Lettering(14, false);
    private static final Lettering HEADING = new Lettering(14, true);
    private static final Lettering KEY = new Lettering(13, false);
    private static final Lettering CAPTION = new Lettering(12, false);
    private static final Lettering WARNING = new Lettering(13, true);

    /** A paragraph of the caption. */
    record Paragraph(String text, boolean warning) {}

    /** The picture as an SVG document. */
    String svg() {
        double height = new Layout(null).height();
        CRC32 crc = new CRC32();
        crc.update(description.getBytes(StandardCharsets.UTF_8));
        SvgSurface surface =
                new SvgSurface("p%08x".formatted(crc.getValue()), title, description, WIDTH, Math.ceil(height));
        new Layout(surface).height();
        return surface.finish();
    }

    /** Goes down the page; without a surface it only measures. */
    private final class Layout {
        private final @Nullable SvgSurface surface;
        private double y = MARGIN;

        Layout(@Nullable SvgSurface surface) {
            this.surface = surface;
        }

        double height() {
            paragraph(title, TITLE, Ink.TEXT, MARGIN);
            y += 2;
            paragraph(lead, LEAD, Ink.TEXT, MARGIN);
            for (Panel panel : panels) {
                y += 12;
                paragraph(panel.heading(), HEADING, Ink.TEXT, MARGIN);
                y += 2;
                chart(panel);
                panel.keys().forEach(this::key);
            }
            y += 10;
            for (Paragraph paragraph : caption) {
                paragraph(
                        paragraph.text,
                        paragraph.warning ? WARNING : CAPTION,
                        paragraph.warning ? Ink.TEXT : Ink.QUIET,
                        MARGIN);
                y += 4;
            }
            return y + MARGIN - 4;
        }

        private void chart(Panel panel) {
            if (surface != null) {
                Rectangle2D area = new Rectangle2D.Double(MARGIN - 8, y, WIDTH - 2 * MARGIN + 8, panel.height());
                panel.plot().draw(surface, area, null, null, null);
                surface.setClip(null);
            }
            y += panel.height();
        }

        private void key(Key key) {
            if (surface != null) {
                key.sample().draw(surface, MARGIN + 4, MARGIN + SAMPLE, y + 10);
            }
            y += 1;
            paragraph(key.meaning(), KEY, Ink.TEXT, MARGIN + SAMPLE + 10);
            y += 2;
        }

        private void paragraph(String text, Lettering with, Ink ink, double left) {
            for (String line : with.lines(text, WIDTH - MARGIN - left)) {
                if (surface != null) {
                    surface.write(line, left, y + with.ascent(), with, ink);
                }
                y += (with.ascent() + with.descent()) * 1.1;
            }
        }
    }
}
