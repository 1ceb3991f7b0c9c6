package tunside.http.watch;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tunside.http.json.ContractNames;

/**
 * Where an answer's type keeps its checks and its outcome; found once a type. Every answer is a record with {@code checks}
 * and a {@code result}, which says by an enum {@code outcome} or {@code verdict} how it ended, if it can end in many ways.
 */
final class AnswerShape {
    private static final ClassValue<AnswerShape> SHAPES = new ClassValue<>() {
        @Override
        protected AnswerShape computeValue(Class<?> type) {
            return new AnswerShape(type);
        }
    };

    private final Optional<Method> checks;
    private final Optional<Method> result;
    private final Optional<Method> ending;

    private AnswerShape(Class<?> type) {
        checks = member(type, "checks").filter(method -> List.class.isAssignableFrom(method.getReturnType()));
        result = member(type, "result");
        ending = result.map(Method::getReturnType)
                .flatMap(inner -> Stream.of("outcome", "verdict")
                        .flatMap(name -> member(inner, name).stream())
                        .filter(method -> method.getReturnType().isEnum())
                        .findFirst());
    }

    static AnswerShape of(Object answer) {
        return SHAPES.get(answer.getClass());
    }

    /** The checks of an answer; empty for what has none. */
    List<?> checks(Object answer) {
        return checks.isEmpty() ? List.of() : (List<?>) call(checks.get(), answer);
    }

    /** How it ended, in the contract's word; "answered" where that has only one way. */
    String outcome(Object answer) {
        if (ending.isEmpty()) {
            return "answered";
        }
        Object value = call(ending.get(), call(result.orElseThrow(), answer));
        return value == null ? "answered" : ContractNames.of((Enum<?>) value);
    }

    private static Optional<Method> member(Class<?> type, String name) {
        return type.isRecord()
                ? Stream.of(type.getRecordComponents())
                        .filter(component -> component.getName().equals(name))
                        .map(RecordComponent::getAccessor)
                        .findFirst()
                : Optional.empty();
    }

    private static Object call(Method method, Object target) {
        try {
            return method.invoke(target);
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new IllegalStateException(e);
        }
    }
}
