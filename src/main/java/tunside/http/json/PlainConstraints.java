package tunside.http.json;

import jakarta.validation.Constraint;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.lang.annotation.Annotation;
import java.lang.reflect.AnnotatedElement;
import java.lang.reflect.AnnotatedParameterizedType;
import java.lang.reflect.AnnotatedType;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Whether a record keeps the constraints of its members, seen at a glance. It knows the few that nearly all members have; of any
 * other, and of one on the record as a whole or on another method, it says that it may be broken. So it passes nothing that a
 * validator would not.
 */
final class PlainConstraints {
    private static final Rule UNKNOWN = value -> false;

    private final boolean ofMembersAlone;
    private final List<Member> members = new ArrayList<>();

    /** What a value must keep. */
    @FunctionalInterface
    private interface Rule {
        boolean isKept(@Nullable Object value);
    }

    /** All that the member of an index must keep. */
    private record Member(int index, Rule[] rules) {
        boolean isSound(@Nullable Object value) {
            for (Rule rule : rules) {
                if (!rule.isKept(value)) {
                    return false;
                }
            }
            return true;
        }
    }

    /** @param type of a record, whose members' own records are not looked into */
    PlainConstraints(Class<?> type) {
        Set<Method> others = new HashSet<>(Set.of(type.getDeclaredMethods()));
        RecordComponent[] components = type.getRecordComponents();
        for (int i = 0; i < components.length; i++) {
            Method accessor = components[i].getAccessor();
            others.remove(accessor);
            List<Rule> rules = rules(accessor);
            rules.addAll(rulesOfItems(accessor.getAnnotatedReturnType()));
            if (!rules.isEmpty()) {
                members.add(new Member(i, rules.toArray(Rule[]::new)));
            }
        }
        this.ofMembersAlone = rules(type).isEmpty()
                && others.stream().allMatch(method -> rules(method).isEmpty());
    }

    /**
     * Whether no constraint can be broken.
     *
     * @param values of all members, in their order
     */
    boolean areKeptBy(@Nullable Object[] values) {
        if (!ofMembersAlone) {
            return false;
        }
        for (Member member : members) {
            if (!member.isSound(values[member.index])) {
                return false;
            }
        }
        return true;
    }

    private static List<Rule> rules(AnnotatedElement element) {
        List<Rule> rules = new ArrayList<>();
        for (Annotation annotation : element.getAnnotations()) {
            if (isConstraint(annotation.annotationType()) && !isForNames(annotation)) {
                rules.add(rule(annotation));
            }
        }
        return rules;
    }

    /** Several constraints of one kind are wrapped in one that is declared within it. */
    private static boolean isConstraint(Class<?> annotation) {
        Class<?> enclosing = annotation.getEnclosingClass();
        return annotation.isAnnotationPresent(Constraint.class)
                || (enclosing != null && enclosing.isAnnotationPresent(Constraint.class));
    }

    /** What each item of a list must keep. */
    private static List<Rule> rulesOfItems(AnnotatedType type) {
        List<Rule> rules = new ArrayList<>();
        if (type instanceof AnnotatedParameterizedType list) {
            for (AnnotatedType item : list.getAnnotatedActualTypeArguments()) {
                List<Rule> ofItem = rules(item);
                ofItem.addAll(rulesOfItems(item));
                for (Rule rule : ofItem) {
                    rules.add(items -> items == null || (items instanceof List<?> all && isKept(rule, all)));
                }
            }
        }
        return rules;
    }

    private static boolean isKept(Rule rule, List<?> items) {
        for (Object item : items) {
            if (!rule.isKept(item)) {
                return false;
            }
        }
        return true;
    }

    private static boolean isForNames(Annotation annotation) {
        return annotation instanceof Known known && List.of(known.groups()).contains(Known.Names.class);
    }

    private static Rule rule(Annotation constraint) {
        if (constraint instanceof NotNull) {
            return value -> value != null;
        }
        if (constraint instanceof DecimalMin bound) {
            double least = DoubleBounds.least(bound);
            return value -> value == null || (value instanceof Double number && number >= least);
        }
        if (constraint instanceof DecimalMax bound) {
            double most = DoubleBounds.most(bound);
            return value -> value == null || (value instanceof Double number && number <= most);
        }
        if (constraint instanceof Min bound) {
            long least = bound.value();
            return value -> value == null || (value instanceof Integer number && number >= least);
        }
        if (constraint instanceof Max bound) {
            long most = bound.value();
            return value -> value == null || (value instanceof Integer number && number <= most);
        }
        if (constraint instanceof Size bounds) {
            int least = bounds.min();
            int most = bounds.max();
            return value -> value == null || (size(value) >= least && size(value) <= most);
        }
        return constraint instanceof Pattern ? value -> value == null : UNKNOWN;
    }

    /** Of what has none, -1, which is below every bound. */
    private static int size(Object value) {
        return value instanceof CharSequence text
                ? text.length()
                : value instanceof Collection<?> items ? items.size() : -1;
    }
}
