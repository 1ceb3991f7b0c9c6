package tunside.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tunside.chemistry.Acids;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Equilibrium;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;

/** The pH of a water from electroneutrality. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class ChemistryBenchmark {
    private static final Temperature ROOM = new Temperature(25);

    /** How many weak acids are in the water, which calcium and magnesium bind. */
    @Param({"0", "1", "3"})
    public int acids;

    private Solution water;

    @Setup
    public void draw() {
        water = Solution.of(Ion.CALCIUM, 0.0015)
                .plus(Solution.of(Ion.MAGNESIUM, 0.0004))
                .plus(Solution.of(Ion.SULFATE, 0.0005))
                .plus(Solution.ofCarbon(0.003))
                .plus(Solution.ofBase(-0.0002));
        String[] ids = {"lactic", "phosphoric", "citric"};
        for (int i = 0; i < acids; i++) {
            water = water.plus(Acids.get(ids[i]).perMole().scaled(0.001));
        }
    }

    @Benchmark
    public Equilibrium phSolve() {
        return ChargeBalance.solve(water, ROOM);
    }
}
