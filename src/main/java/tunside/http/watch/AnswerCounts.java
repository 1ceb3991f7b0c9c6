package tunside.http.watch;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import tunside.finding.Outcome;
import tunside.http.answer.Check;
import tunside.http.problem.Problem;

/**
 * Counts what was answered: {@code tunside_answers_total} by capability and outcome, {@code tunside_checks_stop_total} by
 * capability and code of every check that says stop. The words come from the contract, so there are few of them.
 */
@Singleton
public final class AnswerCounts {
    private final MeterRegistry registry;
    private final Map<String, Counter> counters = new ConcurrentHashMap<>();

    @Inject
    public AnswerCounts(MeterRegistry registry) {
        this.registry = registry;
    }

    /**
     * Counts one answer or problem.
     *
     * @param path address of the resource, or empty where none was reached
     */
    public void count(String path, Object answer) {
        String capability = path.isEmpty() ? "none" : path.substring(path.lastIndexOf('/') + 1);
        AnswerShape shape = AnswerShape.of(answer);
        String outcome = answer instanceof Problem problem
                ? problem.type().substring("/problems/".length())
                : shape.outcome(answer);
        counter("tunside.answers", "outcome", capability, outcome).increment();
        for (Object found : shape.checks(answer)) {
            if (found instanceof Check check && check.outcome() == Outcome.STOP) {
                counter("tunside.checks.stop", "code", capability, check.code()).increment();
            }
        }
    }

    private Counter counter(String name, String label, String capability, String value) {
        return counters.computeIfAbsent(
                name + ' ' + capability + ' ' + value,
                key -> registry.counter(name, "capability", capability, label, value));
    }
}
