package tunside.http.json;

import io.quarkus.hibernate.validator.ValidatorFactoryCustomizer;
import jakarta.inject.Singleton;
import jakarta.validation.ConstraintValidator;
import jakarta.validation.ConstraintValidatorContext;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
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

    /** Holds a number against the least that it may be; null is left to other constraints. */
    public static class AtLeast implements ConstraintValidator<DecimalMin, Double> {
        private double least;
        private boolean inclusive;

        @Override
        public void initialize(DecimalMin bound) {
            least = Double.parseDouble(bound.value());
            inclusive = bound.inclusive();
        }

        @Override
        public boolean isValid(Double number, ConstraintValidatorContext context) {
            return number == null || number > least || (inclusive && number == least);
        }
    }

    /** Holds a number against the most that it may be; null is left to other constraints. */
    public static class AtMost implements ConstraintValidator<DecimalMax, Double> {
        private double most;
        private boolean inclusive;

        @Override
        public void initialize(DecimalMax bound) {
            most = Double.parseDouble(bound.value());
            inclusive = bound.inclusive();
        }

        @Override
        public boolean isValid(Double number, ConstraintValidatorContext context) {
            return number == null || number < most || (inclusive && number == most);
        }
    }
}
