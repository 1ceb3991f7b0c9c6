package tunside.http.json;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import tunside.quantity.Symbol;

/** How enums are written in requests and answers: by their symbol, or in lower case with hyphens. */
public final class ContractNames {
    private static final ClassValue<Map<Enum<?>, String>> NAMES = new ClassValue<>() {
        @Override
        protected Map<Enum<?>, String> computeValue(Class<?> type) {
            return Arrays.stream(type.getEnumConstants())
                    .<Enum<?>>map(constant -> (Enum<?>) constant)
                    .collect(Collectors.toUnmodifiableMap(constant -> constant, ContractNames::name));
        }
    };

    private ContractNames() {}

    /** {@code US-gal} for a unit, {@code none-needed} for {@code NONE_NEEDED}. */
    public static String of(Enum<?> constant) {
        return requireNonNull(NAMES.get(constant.getDeclaringClass()).get(constant));
    }

    private static String name(Enum<?> constant) {
        return constant instanceof Symbol symbolic ? symbolic.symbol() : kebab(constant.name());
    }

    /** Lower case with hyphens. */
    public static String kebab(String constantName) {
        return constantName.toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
