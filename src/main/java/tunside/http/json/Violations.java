package tunside.http.json;

import jakarta.validation.ConstraintViolation;
import jakarta.validation.Path;
import jakarta.validation.Validator;
import jakarta.validation.metadata.ConstraintDescriptor;
import jakarta.validation.metadata.ElementDescriptor;
import jakarta.validation.metadata.PropertyDescriptor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Rounded;
import tunside.http.problem.Fault;

/** Constraint violations as faults: the pointer, the whole range and the value given. */
final class Violations {
    private Violations() {}

    static <T> List<Fault> of(Validator validator, T request, Class<?>... groups) {
        List<Fault> faults = new ArrayList<>();
        for (ConstraintViolation<T> violation : validator.validate(request, groups)) {
            faults.add(new Fault(pointer(violation.getPropertyPath()), detail(validator, violation)));
        }
        faults.sort(Comparator.comparing(Fault::pointer));
        return faults;
    }

    private static String pointer(Path path) {
        StringBuilder pointer = new StringBuilder();
        for (Path.Node node : path) {
            if (node.getIndex() != null) {
                pointer.append('/').append(node.getIndex());
            } else if (node.getKey() != null) {
                pointer.append('/').append(node.getKey());
            }
            if (node.getName() != null && !node.getName().startsWith("<")) {
                pointer.append('/').append(node.getName());
            }
        }
        return pointer.toString();
    }

    private static String detail(Validator validator, ConstraintViolation<?> violation) {
        Object value = violation.getInvalidValue();
        ConstraintDescriptor<?> broken = violation.getConstraintDescriptor();
        return switch (name(broken)) {
            case "Known" -> ((Known) broken.getAnnotation()).value().fault(String.valueOf(value));
            case "NotNull" -> "is missing" + choices(violation);
            case "Size", "NotEmpty" ->
                value instanceof Collection<?> items
                        ? "must have from %s to %s items but has %d"
                                .formatted(
                                        broken.getAttributes().get("min"),
                                        broken.getAttributes().get("max"),
                                        items.size())
                        : "must have from %s to %s characters but is \"%s\""
                                .formatted(
                                        broken.getAttributes().get("min"),
                                        broken.getAttributes().get("max"),
                                        BodyFaults.shortened(String.valueOf(value)));
            case "DecimalMin", "DecimalMax", "Min", "Max" -> range(validator, violation);
            default -> violation.getMessage() + " but is \"" + BodyFaults.shortened(String.valueOf(value)) + "\"";
        };
    }

    /** The names that an enum member takes, such as the units of a quantity. */
    private static String choices(ConstraintViolation<?> violation) {
        Object owner = violation.getLeafBean();
        String property = lastName(violation.getPropertyPath());
        if (owner == null || !owner.getClass().isRecord()) {
            return "";
        }
        for (RecordComponent component : owner.getClass().getRecordComponents()) {
            if (component.getName().equals(property) && component.getType().isEnum()) {
                return Arrays.stream(component.getType().getEnumConstants())
                        .map(constant -> ContractNames.of((Enum<?>) constant))
                        .collect(Collectors.joining(", ", "; it must be one of ", ""));
            }
        }
        return "";
    }

    private static String range(Validator validator, ConstraintViolation<?> violation) {
        String low = null;
        String high = null;
        for (ConstraintDescriptor<?> constraint : siblings(validator, violation)) {
            switch (name(constraint)) {
                case "DecimalMin", "Min" ->
                    low = String.valueOf(constraint.getAttributes().get("value"));
                case "DecimalMax", "Max" ->
                    high = String.valueOf(constraint.getAttributes().get("value"));
                default -> {
                    // says nothing about a range
                }
            }
        }
        String range = low != null && high != null
                ? "from %s to %s".formatted(low, high)
                : low != null ? "at least " + low : "at most " + high;
        Object value = violation.getInvalidValue();
        return "must be %s but is %s".formatted(range, value instanceof Double number ? Rounded.text(number) : value);
    }

    private static Collection<? extends ConstraintDescriptor<?>> siblings(
            Validator validator, ConstraintViolation<?> violation) {
        String property = lastName(violation.getPropertyPath());
        Object owner = violation.getLeafBean();
        PropertyDescriptor descriptor = owner == null || property == null
                ? null
                : validator.getConstraintsForClass(owner.getClass()).getConstraintsForProperty(property);
        return descriptor == null
                ? List.of(violation.getConstraintDescriptor())
                : ((ElementDescriptor) descriptor).getConstraintDescriptors();
    }

    private static @Nullable String lastName(Path path) {
        String name = null;
        for (Path.Node node : path) {
            name = node.getName();
        }
        return name;
    }

    private static String name(ConstraintDescriptor<?> descriptor) {
        return descriptor.getAnnotation().annotationType().getSimpleName();
    }
}
