package tunside.http.vary;

import com.fasterxml.jackson.databind.JsonNode;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * An end of a range.
 *
 * @param value finite
 * @param unit as in the request; null for a plain number
 */
@Schema(description = "A quantity in any unit that the varied member takes.")
record VaryQuantity(
        @Schema(description = "How many of the unit.", required = true, minimum = "-1e9", maximum = "1e9")
        double value,

        @Schema(description = "The unit.", required = true, examples = "L", maxLength = 40) @Nullable
        String unit) {

    /** What stands there, or null if it is neither a number nor a quantity. */
    static @Nullable VaryQuantity read(JsonNode node) {
        if (isNumber(node)) {
            return new VaryQuantity(node.doubleValue(), null);
        }
        return isQuantity(node)
                ? new VaryQuantity(
                        node.get("value").doubleValue(), node.get("unit").textValue())
                : null;
    }

    static boolean isNumber(JsonNode node) {
        return node.isNumber() && Double.isFinite(node.doubleValue());
    }

    static boolean isQuantity(JsonNode node) {
        return node.isObject()
                && node.size() == 2
                && node.has("value")
                && isNumber(node.get("value"))
                && node.path("unit").isTextual();
    }
}
