package tunside.http.json;

import jakarta.validation.Constraint;
import jakarta.validation.Payload;
import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * The text is an id of one of the service's tables; null is left to other constraints.
 *
 * <p>A group of its own: a request that is otherwise in order goes on to its mapper, which looks the id up and finds what
 * else only the science can tell. Where other constraints are broken the ids are checked here, so that one answer names all.
 */
@Documented
@Constraint(validatedBy = KnownValidator.class)
@Target({ElementType.FIELD, ElementType.METHOD, ElementType.PARAMETER, ElementType.RECORD_COMPONENT})
@Retention(RetentionPolicy.RUNTIME)
public @interface Known {
    /** The group to give to every use. */
    interface Names {}

    /** Whose ids. */
    KnownIds value();

    /** Not used: {@link Violations} words it with the value given. */
    String message() default "is not known";

    /** As the standard asks. */
    Class<?>[] groups() default {};

    /** As the standard asks. */
    Class<? extends Payload>[] payload() default {};
}
