package tunside.http.json;

import java.util.Locale;
import tunside.quantity.Symbol;

/** How enums are written in requests and answers: by their symbol, or in lower case with hyphens. */
public final class ContractNames {
    private ContractNames() {}

    /** {@code US-gal} for a unit, {@code none-needed} for {@code NONE_NEEDED}. */
    public static String of(Enum<?> constant) {
        return constant instanceof Symbol symbolic ? symbolic.symbol() : kebab(constant.name());
    }

    /** Lower case with hyphens. */
    public static String kebab(String constantName) {
        return constantName.toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
