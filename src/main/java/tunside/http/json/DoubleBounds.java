package tunside.http.json;

import io.quarkus.hibernate.validator.ValidatorFactoryCustomizer;
import jakarta.inject.Singleton;
import jakarta.validation.ConstraintValidator;
import jakarta.validation.ConstraintValidatorContext;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import java.lang.annotation.Annotation;
import org.hibernate.validator.BaseHibernateValidatorConfiguration;
import org.hibernate.validator.cfg.ConstraintMapping;

/**
 * Compares the numbers of a request with their bounds as the doubles they are. The usual validators write each number as text and
 * read it again as a decimal; a double and the nearest double of a bound compare in the same way.
 */
@Singleton
public final class DoubleBounds implements ValidatorFactoryCustomizer {
    @Override
    public void customize(BaseHibernateValidatorConfiguration<?> configuration) {
        ConstraintMapping mapping = configuration.createConstraintMapping();
        mapping.constraintDefinition(DecimalMin.class)
                .includeExistingValidators(false)
                .validatedBy(AtLeast.class);
        mapping.constraintDefinition(DecimalMax.class)
                .includeExistingValidators(false)
                .validatedBy(AtMost.class);
        configuration.addMapping(mapping);
    }

    /** The least double that keeps a bound. */
    static double least(DecimalMin bound) {
        double least = Double.parseDouble(bound.value());
        return bound.inclusive() ? least : Math.nextUp(least);
    }

    /** The greatest double that keeps a bound. */
    static double most(DecimalMax bound) {
        double most = Double.parseDouble(bound.value());
        return bound.inclusive() ? most : Math.nextDown(most);
    }

    /** Holds a number between two bounds; null is left to other constraints. */
    private abstract static class Between<A extends Annotation> implements ConstraintValidator<A, Double> {
        private double lowest = Double.NEGATIVE_INFINITY;
        private double highest = Double.POSITIVE_INFINITY;

        final void atLeast(double least) {
            lowest = least;
        }

        final void atMost(double most) {
            highest = most;
        }

        @Override
        public boolean isValid(Double number, ConstraintValidatorContext context) {
            return number == null || (number >= lowest && number <= highest);
        }
    }

    /** The least that a number may be. */
    public static class AtLeast extends Between<DecimalMin> {
        @Override
        public void initialize(DecimalMin bound) {
            atLeast(least(bound));
        }
    }

    /** The most that a number may be. */
    public static class AtMost extends Between<DecimalMax> {
        @Override
        public void initialize(DecimalMax bound) {
            atMost(most(bound));
        }
    }
}
