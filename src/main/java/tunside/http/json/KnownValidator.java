package tunside.http.json;

import jakarta.validation.ConstraintValidator;
import jakarta.validation.ConstraintValidatorContext;

/** Looks an id up. */
public class KnownValidator implements ConstraintValidator<Known, String> {
    @SuppressWarnings("NullAway.Init") // by initialize, before anything is asked
    private KnownIds ids;

    @Override
    public void initialize(Known known) {
        ids = known.value();
    }

    @Override
    public boolean isValid(String id, ConstraintValidatorContext context) {
        return id == null || ids.has(id);
    }
}
