package tunside.http.json;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.validation.Validation;
import jakarta.validation.Validator;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import org.hibernate.validator.HibernateValidator;
import org.hibernate.validator.HibernateValidatorConfiguration;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class DoubleBoundsTest {
    private static final double LEAST = 0.001;
    private static final double MOST = 12.3;

    private record Bounded(
            @DecimalMin("0.001") @DecimalMax("12.3") @Nullable
            Double number) {}

    private record Open(
            @DecimalMin(value = "0.001", inclusive = false) @DecimalMax(value = "12.3", inclusive = false)
            double number) {}

    @Test
    void aNumberMayBeItsBoundsAndNothingBeyondThem() {
        assertThat(faults(new Bounded(LEAST))).isZero();
        assertThat(faults(new Bounded(MOST))).isZero();
        assertThat(faults(new Bounded(Math.nextDown(LEAST)))).isEqualTo(1);
        assertThat(faults(new Bounded(Math.nextUp(MOST)))).isEqualTo(1);
        assertThat(faults(new Bounded(-MOST))).isEqualTo(1);
    }

    @Test
    void aNumberIsNoOpenBound() {
        assertThat(faults(new Open(LEAST))).isEqualTo(1);
        assertThat(faults(new Open(MOST))).isEqualTo(1);
        assertThat(faults(new Open(Math.nextUp(LEAST)))).isZero();
        assertThat(faults(new Open(Math.nextDown(MOST)))).isZero();
    }

    @Test
    void whatIsLeftOutIsNotHeldAgainstABound() {
        assertThat(faults(new Bounded(null))).isZero();
    }

    @Test
    void whatIsNoNumberIsWithinNoBound() {
        assertThat(faults(new Bounded(Double.NaN))).isEqualTo(2);
    }

    private static int faults(Object bounded) {
        HibernateValidatorConfiguration configuration =
                Validation.byProvider(HibernateValidator.class).configure();
        new DoubleBounds().customize(configuration);
        Validator validator = configuration.buildValidatorFactory().getValidator();
        return validator.validate(bounded).size();
    }
}
