package tunside.http.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.validation.Constraint;
import jakarta.validation.Payload;
import jakarta.validation.Validation;
import jakarta.validation.Validator;
import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.io.IOException;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Nothing that the validator refuses passes at a glance; and what is right does pass, or the glance would be for nothing. */
class PlainConstraintsTest {
    private static final Validator VALIDATOR =
            Validation.buildDefaultValidatorFactory().getValidator();
    private static final ObjectMapper MAPPER = mapper();

    private static ObjectMapper mapper() {
        ObjectMapper mapper = new ObjectMapper();
        new StrictJson().customize(mapper);
        return mapper;
    }

    @Constraint(validatedBy = {})
    @Target({ElementType.TYPE, ElementType.METHOD})
    @Retention(RetentionPolicy.RUNTIME)
    @interface OfTheHouse {
        String message() default "";

        Class<?>[] groups() default {};

        Class<? extends Payload>[] payload() default {};
    }

    @OfTheHouse
    private record Whole(@Nullable Double number) {}

    @OfTheHouse
    private record Empty() {}

    private record Derived(@Nullable Double number) {
        @AssertTrue
        public boolean isRight() {
            return false;
        }
    }

    private record Special(@OfTheHouse @Nullable Double number) {}

    private record Twice(@Size(min = 1) @Size(max = 3) String text) {}

    private record Deep(List<List<@NotNull Double>> rows) {}

    private record Items(List<@NotNull @DecimalMin("2") Double> items) {}

    private record Whole7(@Min(3) @Max(7) @Nullable Integer number) {}

    private record Written(@Pattern(regexp = "a+") @Nullable String text) {}

    private record Free(@Nullable String text, @Nullable Double number) {}

    private static boolean passes(Record owner) {
        return new PlainConstraints(owner.getClass()).areKeptBy(values(owner));
    }

    private static @Nullable Object[] values(Record owner) {
        RecordComponent[] components = owner.getClass().getRecordComponents();
        @Nullable Object[] values = new Object[components.length];
        for (int i = 0; i < values.length; i++) {
            try {
                values[i] = components[i].getAccessor().invoke(owner);
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(e);
            }
        }
        return values;
    }

    @Test
    void anUnknownConstraintMayBeBroken() {
        assertThat(passes(new Whole(1.0))).isFalse();
        assertThat(passes(new Empty())).isFalse();
        assertThat(passes(new Derived(1.0))).isFalse();
        assertThat(passes(new Special(1.0))).isFalse();
        assertThat(passes(new Twice("ab"))).isFalse();
        assertThat(passes(new Written("a"))).isFalse();
    }

    @Test
    void aKnownOneIsKeptOrNot() {
        assertThat(passes(new Free(null, null))).isTrue();
        assertThat(passes(new Written(null))).isTrue();
        assertThat(passes(new Whole7(null))).isTrue();
        assertThat(passes(new Whole7(3))).isTrue();
        assertThat(passes(new Whole7(7))).isTrue();
        assertThat(passes(new Whole7(2))).isFalse();
        assertThat(passes(new Whole7(8))).isFalse();
        assertThat(passes(new Items(List.of()))).isTrue();
        assertThat(passes(new Items(List.of(2.0, 3.0)))).isTrue();
        assertThat(passes(new Items(List.of(2.0, 1.9)))).isFalse();
        assertThat(passes(new Items(Arrays.asList(2.0, null)))).isFalse();
        assertThat(passes(new Deep(List.of(List.of(1.0), List.of())))).isTrue();
        assertThat(passes(new Deep(List.of(List.of(1.0), Arrays.asList(1.0, null)))))
                .isFalse();
    }

    /** Every member of every example, left out, emptied, and with values far too small and too large. */
    @ParameterizedTest
    @CsvSource({
        "analyseWater, tunside.http.water.WaterAnalysisRequest, 500",
        "computeAcidDose, tunside.http.dosing.AcidDoseRequest, 2000",
        "diluteAcid, tunside.http.dilution.AcidDilutionRequest, 200",
        "evaluateCalibration, tunside.http.calibration.CalibrationEvaluationRequest, 500",
        "judgePhReading, tunside.http.reading.PhReadingRequest, 500",
        "planMash, tunside.http.plan.MashPlanRequest, 1000",
        "predictMash, tunside.http.mash.MashPredictionRequest, 1000",
        "reviewBrews, tunside.http.review.BrewReviewRequest, 2000"
    })
    void nothingPassesThatTheValidatorRefuses(String operation, Class<?> type, int atLeast) throws IOException {
        int refused = 0;
        int passed = 0;
        for (JsonNode example : MAPPER.readTree(getClass().getResourceAsStream("/examples/" + operation + ".json"))) {
            JsonNode question = example.get("request");
            List<JsonNode> all = new ArrayList<>(mutants(question));
            all.add(question);
            for (JsonNode each : all) {
                BodyFaults faults = new BodyFaults();
                Object read = read(each, type, faults);
                boolean sound = VALIDATOR.validate(read).isEmpty();
                assertThat(faults.areNone() && !sound).as(each.toString()).isFalse();
                refused += sound ? 0 : 1;
                passed += faults.areNone() ? 1 : 0;
            }
            if (example.get("status").asInt() == 200 && !question.toString().contains("\"product\"")) {
                BodyFaults faults = new BodyFaults();
                read(question, type, faults);
                assertThat(faults.areNone()).as(question.toString()).isTrue();
            }
        }
        assertThat(refused).isGreaterThan(atLeast);
        assertThat(passed).isGreaterThan(atLeast / 10);
    }

    private static Object read(JsonNode body, Class<?> type, BodyFaults faults) throws IOException {
        return MAPPER.readerFor(type)
                .withAttribute(BodyFaults.ATTRIBUTE, faults)
                .readValue(MAPPER.writeValueAsBytes(body));
    }

    private static List<JsonNode> mutants(JsonNode whole) {
        List<JsonNode> mutants = new ArrayList<>();
        for (String pointer : pointers(whole, "")) {
            int last = pointer.lastIndexOf('/');
            for (JsonNode instead : instead(whole.at(pointer))) {
                JsonNode mutant = whole.deepCopy();
                JsonNode owner = mutant.at(pointer.substring(0, last));
                if (owner instanceof ObjectNode object) {
                    object.set(pointer.substring(last + 1), instead);
                } else if (owner instanceof ArrayNode array) {
                    array.set(Integer.parseInt(pointer.substring(last + 1)), instead);
                }
                mutants.add(mutant);
            }
        }
        return mutants;
    }

    private static List<String> pointers(JsonNode node, String at) {
        List<String> pointers = new ArrayList<>();
        if (!at.isEmpty()) {
            pointers.add(at);
        }
        for (Map.Entry<String, JsonNode> member : node.properties()) {
            pointers.addAll(pointers(member.getValue(), at + "/" + member.getKey()));
        }
        for (int i = 0; i < (node.isArray() ? node.size() : 0); i++) {
            pointers.addAll(pointers(node.get(i), at + "/" + i));
        }
        return pointers;
    }

    private static List<JsonNode> instead(JsonNode value) {
        JsonNodeFactory nodes = JsonNodeFactory.instance;
        List<JsonNode> others = new ArrayList<>(List.of(nodes.nullNode()));
        if (value.isNumber()) {
            for (double number : new double[] {-1e15, -1, -1e-9, 0, 1e-9, 1e6, 1e15}) {
                others.add(nodes.numberNode(number));
            }
            for (int number : new int[] {-1, 0, 1, 1000, Integer.MAX_VALUE}) {
                others.add(nodes.numberNode(number));
            }
        } else if (value.isTextual()) {
            others.add(nodes.textNode(""));
            others.add(nodes.textNode("x".repeat(1000)));
        } else if (value.isArray()) {
            others.add(nodes.arrayNode());
            others.add(nodes.arrayNode().addNull());
            ArrayNode many = nodes.arrayNode();
            for (int i = 0; i < 300 && !value.isEmpty(); i++) {
                many.add(value.get(0));
            }
            others.add(many);
        } else if (value.isObject()) {
            others.add(nodes.objectNode());
        }
        return others;
    }
}
