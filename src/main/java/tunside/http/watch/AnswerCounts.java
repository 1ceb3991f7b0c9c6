package tunside.http.watch;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import tunside.finding.Outcome;
import tunside.http.answer.Answer;
import tunside.http.answer.Check;

/**
 * Counts what was answered: {@code tunside_answers_total} by capability and outcome, {@code tunside_checks_stop_total} by
 * capability and code of every check that says stop. The words come from the contract, so there are few of them.
 */
@Singleton
public final class AnswerCounts {
    private final MeterRegistry registry;
    private final Map<Labels, Counter> counters = new ConcurrentHashMap<>();

    /** What tells one counter from another. */
    private record Labels(String meter, String label, String capability, String value) {}

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
        if (answer instanceof Answer told) {
            counter(new Labels("tunside.answers", "outcome", capability, told.ending()))
                    .increment();
            for (Check check : told.checks()) {
                if (check.outcome() == Outcome.STOP) {
                    counter(new Labels("tunside.checks.stop", "code", capability, check.code()))
                            .increment();
                }
            }
        }
    }

    private Counter counter(Labels labels) {
        return counters.computeIfAbsent(
                labels, key -> registry.counter(key.meter, "capability", key.capability, key.label, key.value));
    }
}
