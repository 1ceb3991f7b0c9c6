package tunside.http.ndjson;

import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletionStage;
import java.util.function.Supplier;

/**
 * A resource method that answers one JSON request.
 *
 * @param path its address
 * @param request type of its body
 * @param method to call
 * @param resource whose method it is
 */
record Computation(String path, Class<?> request, Method method, Supplier<Object> resource) {

    /** Those of one resource: its POST methods whose one parameter is the body, but for those that answer in another form. */
    static List<Computation> of(Class<?> resourceClass, Supplier<Object> resource) {
        List<Computation> computations = new ArrayList<>();
        for (Method method : resourceClass.getMethods()) {
            if (method.isAnnotationPresent(POST.class)
                    && method.getParameterCount() == 1
                    && !method.isAnnotationPresent(Produces.class)
                    && method.getParameterAnnotations()[0].length == annotationsOfABody(method)) {
                String path = resourceClass.getAnnotation(Path.class).value();
                computations.add(new Computation(path, method.getParameterTypes()[0], method, resource));
            }
        }
        return computations;
    }

    /** A body carries constraints at most; what comes from address or headers is marked by Jakarta REST. */
    private static long annotationsOfABody(Method method) {
        return Arrays.stream(method.getParameterAnnotations()[0])
                .filter(annotation ->
                        !annotation.annotationType().getPackageName().startsWith(Path.class.getPackageName()))
                .count();
    }

    /** The answer to a request; throws what the resource throws. */
    Object answer(Object body) {
        try {
            Object answer = method.invoke(resource.get(), body);
            return answer instanceof CompletionStage<?> stage
                    ? stage.toCompletableFuture().join()
                    : answer;
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(e.getCause());
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }
}
