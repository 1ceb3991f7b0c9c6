package tunside.http.watch;

import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.binder.MeterBinder;
import jakarta.inject.Singleton;
import tunside.chemistry.Solver;
import tunside.http.json.ContractNames;

/** Shows what the solvers did: {@code tunside_solver_solves_total} and {@code tunside_solver_iterations_total}, by solver. */
@Singleton
public final class SolverCounts implements MeterBinder {
    @Override
    public void bindTo(MeterRegistry registry) {
        for (Solver solver : Solver.values()) {
            String name = ContractNames.of(solver);
            FunctionCounter.builder("tunside.solver.solves", solver, Solver::solves)
                    .description("What was solved.")
                    .tag("solver", name)
                    .register(registry);
            FunctionCounter.builder("tunside.solver.iterations", solver, Solver::iterations)
                    .description("Iterations that it took; of what, says the enum Solver.")
                    .tag("solver", name)
                    .register(registry);
        }
    }
}
