package tunside.http.picture;

import java.awt.Color;
import java.util.Arrays;
import java.util.stream.Collectors;

/**
 * What a thing on a picture is drawn with: a colour on light and one on dark ground. Hues are told apart with every kind
 * of colour vision, and no two things differ by hue alone: line style, marker or place differ too.
 */
enum Ink {
    PANEL(0xffffff, 0x15181c),
    TEXT(0x1c1f23, 0xe9ebee),
    QUIET(0x565c64, 0xa9b0b8),
    GRID(0xdde1e5, 0x343a41),
    FRAME(0x8b929a, 0x6d757e),
    FIRST(0x00598c, 0x6bbcf0),
    SECOND(0xb34700, 0xf5a35c),
    THIRD(0x00735a, 0x54cfa9),
    RANGE(0x2f9e7c, 0x2f8f72),
    GIVES(0xd98a4b, 0xb86a2c);

    private final Color light;
    private final Color dark;

    Ink(int light, int dark) {
        this.light = new Color(light);
        this.dark = new Color(dark);
    }

    /** As charts are told to draw it; the picture's style sheet decides between light and dark. */
    Color color() {
        return light;
    }

    /** The ink of a colour, whatever its opacity; what no ink has is drawn like text. */
    static Ink of(Color color) {
        return Arrays.stream(values())
                .filter(ink -> (ink.light.getRGB() & 0xffffff) == (color.getRGB() & 0xffffff))
                .findFirst()
                .orElse(TEXT);
    }

    @SuppressWarnings("EnumOrdinal") // short, and kept nowhere
    private int number() {
        return ordinal();
    }

    /** Class of what is filled with it. */
    String fillClass() {
        return "f" + number();
    }

    /** Class of what is outlined with it. */
    String strokeClass() {
        return "s" + number();
    }

    /** The rules for every ink, within {@code .picture}. */
    static String styleSheet() {
        return rules(false) + "@media (prefers-color-scheme:dark){" + rules(true) + "}";
    }

    private static String rules(boolean dark) {
        return Arrays.stream(values())
                .map(ink -> ".picture .%s{fill:%s}.picture .%s{stroke:%s}"
                        .formatted(ink.fillClass(), ink.hex(dark), ink.strokeClass(), ink.hex(dark)))
                .collect(Collectors.joining());
    }

    private String hex(boolean onDark) {
        return "#%06x".formatted((onDark ? dark : light).getRGB() & 0xffffff);
    }
}
