package tunside.http.vary;

import static java.util.Objects.requireNonNull;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Rounded;
import tunside.http.json.BodyReader;
import tunside.http.problem.Fault;
import tunside.http.problem.InvalidRequestException;
import tunside.http.problem.Place;
import tunside.http.problem.UnanswerableException;

/**
 * Varies any quantity or number of any request: the request goes back to JSON, the value is set there, and the whole is
 * read again by the same reader, so that every rule of the contract holds at every step.
 */
@Singleton
public final class Variations {
    private static final String VARY = "vary";
    private static final int DIGITS = 12;
    private static final int LONGEST_LIST = 400;

    private final ObjectMapper mapper;
    private final BodyReader reader;

    @Inject
    public Variations(ObjectMapper mapper, BodyReader reader) {
        this.mapper = mapper;
        this.reader = reader;
    }

    /** Unit of the varied values; null for plain numbers. The range must have been accepted by {@link #answers}. */
    public static @Nullable String unit(VaryRequest vary) {
        return end(vary.from()).unit();
    }

    /**
     * The answers along the range.
     *
     * @param request whose member is varied, without fault itself; its member {@code vary} is left out
     * @param answer to a request
     * @throws InvalidRequestException if the pointer or the range does not fit, or if a step breaks the contract
     */
    public <Q, A> List<Varied<A>> answers(Q request, VaryRequest vary, Function<Q, A> answer) {
        ObjectNode tree = mapper.valueToTree(request);
        tree.remove(VARY);
        Map<String, JsonNode> members = new LinkedHashMap<>();
        collect(tree, "", members);
        requireFit(vary, members);
        VaryQuantity from = end(vary.from());
        VaryQuantity to = end(vary.to());
        List<Varied<A>> answers = new ArrayList<>();
        for (int i = 0; i < vary.steps(); i++) {
            double share = i / (vary.steps() - 1.0);
            double value = Rounded.significant(from.value() + share * (to.value() - from.value()), DIGITS);
            set(tree, JsonPointer.compile(vary.pointer()), value, from.unit());
            answers.add(new Varied<>(value, answer(tree, request, value, from.unit(), answer)));
        }
        return answers;
    }

    private <Q, A> @Nullable A answer(
            ObjectNode tree, Q request, double value, @Nullable String unit, Function<Q, A> answer) {
        try {
            @SuppressWarnings("unchecked")
            Class<Q> type = (Class<Q>) request.getClass();
            return answer.apply(reader.read(mapper.writeValueAsBytes(tree), type));
        } catch (UnanswerableException e) {
            return null;
        } catch (InvalidRequestException e) {
            String at = "at " + Rounded.text(value) + (unit == null ? "" : " " + unit) + ", ";
            throw new InvalidRequestException(e.faults().stream()
                    .map(fault -> new Fault("/" + VARY, at + fault.pointer() + " " + fault.detail()))
                    .toList());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Every quantity and every number outside of quantities, by its pointer. */
    private static void collect(JsonNode node, String pointer, Map<String, JsonNode> members) {
        if (VaryQuantity.isNumber(node) || VaryQuantity.isQuantity(node)) {
            members.put(pointer, node);
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                collect(node.get(i), pointer + "/" + i, members);
            }
        } else {
            node.properties().forEach(member -> collect(member.getValue(), pointer + "/" + member.getKey(), members));
        }
    }

    private static VaryQuantity end(JsonNode accepted) {
        return requireNonNull(VaryQuantity.read(accepted));
    }

    private static void requireFit(VaryRequest vary, Map<String, JsonNode> members) {
        Place place = Place.root().member(VARY);
        JsonNode varied = members.get(vary.pointer());
        if (varied == null) {
            place.member("pointer")
                    .fault("must point to a quantity or number of this request, one of %s, but is \"%s\""
                            .formatted(shortened(String.join(", ", members.keySet())), vary.pointer()));
            place.stopIfFaulty();
        }
        requireNonNull(varied); // or it has stopped
        requireKind(place.member("from"), vary.from(), varied, vary.pointer());
        requireKind(place.member("to"), vary.to(), varied, vary.pointer());
        place.stopIfFaulty();
        String unit = unit(vary);
        String other = end(vary.to()).unit();
        if (unit != null && !unit.equals(other)) {
            place.member("to").fault("must be in %s, the unit of 'from', but is in %s".formatted(unit, other));
        }
        place.stopIfFaulty();
    }

    private static void requireKind(Place place, JsonNode end, JsonNode varied, String pointer) {
        if (varied.isObject() && !VaryQuantity.isQuantity(end)) {
            place.fault("must be a quantity like {\"value\": 5, \"unit\": \"%s\"}, because %s is one, but is %s"
                    .formatted(varied.get("unit").textValue(), pointer, shortened(end.toString())));
        } else if (varied.isNumber() && !VaryQuantity.isNumber(end)) {
            place.fault("must be a plain number, because %s is one, but is %s"
                    .formatted(pointer, shortened(end.toString())));
        }
    }

    private static String shortened(String text) {
        return text.length() <= LONGEST_LIST ? text : text.substring(0, text.lastIndexOf(',', LONGEST_LIST)) + " ...";
    }

    private static void set(ObjectNode tree, JsonPointer pointer, double value, @Nullable String unit) {
        JsonNode parent = tree.at(pointer.head());
        JsonPointer last = pointer.last();
        JsonNode varied = unit == null
                ? tree.numberNode(value)
                : tree.objectNode().put("value", value).put("unit", unit);
        if (parent instanceof ArrayNode array) {
            array.set(last.getMatchingIndex(), varied);
        } else {
            ((ObjectNode) parent).set(last.getMatchingProperty(), varied);
        }
    }
}
