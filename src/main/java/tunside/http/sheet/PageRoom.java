package tunside.http.sheet;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import tunside.http.picture.Lettering;

/**
 * What is left of a page while it is filled, in mm of height. Texts are measured in a wide typeface and the page is the
 * shorter of A4 and US Letter, so a sheet that fits here fits wherever it is printed.
 */
final class PageRoom {
    private static final double POINT_MM = 25.4 / 72;
    private static final int TENTHS = 10;

    private double left;

    PageRoom(double height) {
        this.left = height;
    }

    /**
     * Height of a text that is broken to a width, in mm.
     *
     * @param points size of its letters
     * @param spacing of its lines
     */
    static double height(String text, double points, boolean bold, double spacing, double width) {
        Lettering lettering = new Lettering((int) Math.round(points * TENTHS), bold);
        int lines = lettering.lines(text, width / POINT_MM * TENTHS).size();
        return lines * points * spacing * POINT_MM;
    }

    /** Width of a text on one line, in mm. */
    static double width(String text, double points, boolean bold) {
        return new Lettering((int) Math.round(points * TENTHS), bold).width(text) / TENTHS * POINT_MM;
    }

    /** Takes what has to stand on the page. */
    void take(double height) {
        left -= height;
    }

    /** Takes the first of some parts, as many as fit, in their order, in one column or two of equal length. */
    <T> List<T> first(List<T> parts, int columns, ToDoubleFunction<T> height) {
        double[] heights = parts.stream().mapToDouble(height).toArray();
        int fitting = parts.size();
        while (height(Arrays.copyOf(heights, fitting), columns) > left) {
            fitting--;
        }
        left -= height(Arrays.copyOf(heights, fitting), columns);
        return parts.subList(0, fitting);
    }

    /** Height of parts below each other, or in two columns that break where they come out shortest. */
    static double height(double[] parts, int columns) {
        double all = Arrays.stream(parts).sum();
        if (columns == 1) {
            return all;
        }
        double shortest = all;
        double above = 0;
        for (double part : parts) {
            above += part;
            shortest = Math.min(shortest, Math.max(above, all - above));
        }
        return shortest;
    }

    /** How many things of one height still fit. */
    int count(double height) {
        return (int) Math.max(0, Math.floor(left / height));
    }

    /** Whether something of this height fits; it is taken if so. */
    boolean fits(double height) {
        if (height > left) {
            return false;
        }
        left -= height;
        return true;
    }
}
