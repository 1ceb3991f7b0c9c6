package tunside.http.picture;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.font.FontRenderContext;
import java.awt.font.LineMetrics;
import java.util.ArrayList;
import java.util.List;

/**
 * A size of the reader's own sans-serif typeface. Picture and sheet cannot know that typeface, so they take the
 * widths of a wide one: nothing is measured with fonts of the machine, which needs none, and every machine draws the same picture.
 */
public final class Lettering extends Font {
    private static final long serialVersionUID = 1;
    /** Widest usual typefaces against the widths below. */
    private static final double WIDE = 1.17;

    private static final double WIDE_BOLD = 1.33;
    /** Advance of the characters from space to tilde, thousandths of the size, in a usual sans-serif typeface. */
    private static final int[] WIDTHS = {
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556,
                556,
        556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556,
                833,
        722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500,
                556,
        556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500,
                334,
        260, 334, 584
    };

    private static final int OTHER_WIDTH = 700;

    public Lettering(int size, boolean bold) {
        super(SANS_SERIF, bold ? Font.BOLD : PLAIN, size);
    }

    /** Width of a text in a wide typeface. */
    public double width(String text) {
        double thousandths = 0;
        for (int i = 0; i < text.length(); i++) {
            int index = text.charAt(i) - ' ';
            thousandths += index >= 0 && index < WIDTHS.length ? WIDTHS[index] : OTHER_WIDTH;
        }
        return thousandths / 1000 * getSize2D() * (isBold() ? WIDE_BOLD : WIDE);
    }

    /** A text in lines that fit a width in wide typefaces too; words longer than a line are broken. */
    public List<String> lines(String text, double width) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.strip().split("\\s+", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (fits(longer, width)) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (!fits(line, width)) {
                int end = line.length() - 1;
                while (end > 1 && !fits(line.substring(0, end), width)) {
                    end--;
                }
                lines.add(line.substring(0, end));
                line = line.substring(end);
            }
        }
        lines.add(line);
        return lines;
    }

    private boolean fits(String text, double width) {
        return text.length() < 2 || width(text) <= width;
    }

    float ascent() {
        return getSize2D() * 0.93f;
    }

    float descent() {
        return getSize2D() * 0.24f;
    }

    @Override
    public LineMetrics getLineMetrics(String text, FontRenderContext context) {
        return new Line(this, text.length());
    }

    /** Measures with the widths above. */
    FontMetrics metrics() {
        return new Metrics(this);
    }

    private static final class Metrics extends FontMetrics {
        private static final long serialVersionUID = 1;
        private final Lettering lettering;

        Metrics(Lettering lettering) {
            super(lettering);
            this.lettering = lettering;
        }

        @Override
        public int getAscent() {
            return Math.round(lettering.ascent());
        }

        @Override
        public int getDescent() {
            return Math.round(lettering.descent());
        }

        @Override
        public int stringWidth(String text) {
            return (int) Math.ceil(lettering.width(text));
        }

        @Override
        public int charWidth(char character) {
            return stringWidth(String.valueOf(character));
        }

        @Override
        public int charsWidth(char[] characters, int from, int length) {
            return stringWidth(new String(characters, from, length));
        }
    }

    private static final class Line extends LineMetrics {
        private final Lettering lettering;
        private final int characters;

        Line(Lettering lettering, int characters) {
            this.lettering = lettering;
            this.characters = characters;
        }

        @Override
        public int getNumChars() {
            return characters;
        }

        @Override
        public float getAscent() {
            return lettering.ascent();
        }

        @Override
        public float getDescent() {
            return lettering.descent();
        }

        @Override
        public float getLeading() {
            return 0;
        }

        @Override
        public float getHeight() {
            return lettering.ascent() + lettering.descent();
        }

        @Override
        public int getBaselineIndex() {
            return ROMAN_BASELINE;
        }

        @Override
        public float[] getBaselineOffsets() {
            return new float[3];
        }

        @Override
        public float getStrikethroughOffset() {
            return -lettering.ascent() / 3;
        }

        @Override
        public float getStrikethroughThickness() {
            return 1;
        }

        @Override
        public float getUnderlineOffset() {
            return 1;
        }

        @Override
        public float getUnderlineThickness() {
            return 1;
        }
    }
}
