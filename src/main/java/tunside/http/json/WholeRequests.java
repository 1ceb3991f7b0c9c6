package tunside.http.json;

import io.quarkus.hibernate.validator.ValidatorFactoryCustomizer;
import jakarta.inject.Singleton;
import jakarta.validation.Path;
import jakarta.validation.TraversableResolver;
import java.lang.annotation.ElementType;
import org.hibernate.validator.BaseHibernateValidatorConfiguration;

/**
 * Says that every member of a request is there to be validated. The usual resolver asks for each whether a database has
 * loaded it, and remembers what it heard.
 */
@Singleton
public final class WholeRequests implements ValidatorFactoryCustomizer {
    private static final TraversableResolver EVERYTHING = new TraversableResolver() {
        @Override
        public boolean isReachable(Object object, Path.Node node, Class<?> root, Path path, ElementType type) {
            return true;
        }

        @Override
        public boolean isCascadable(Object object, Path.Node node, Class<?> root, Path path, ElementType type) {
            return true;
        }
    };

    @Override
    public void customize(BaseHibernateValidatorConfiguration<?> configuration) {
        configuration.traversableResolver(EVERYTHING);
        configuration.enableTraversableResolverResultCache(false);
    }
}
