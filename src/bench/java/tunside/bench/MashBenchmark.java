package tunside.bench;

import java.util.ArrayList;
import java.util.List;
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
import tunside.mash.AcidAddition;
import tunside.mash.Estimate;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MashPrediction;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/** The prediction of a mash: the pH alone, and all of it with uncertainty, influences, titration curve and ions. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class MashBenchmark {
    @Param({"1", "2", "4", "6", "16", "64"})
    public int malts;

    private Mash mash;

    @Setup
    public void draw() {
        List<GristPart> parts = new ArrayList<>();
        for (int i = 0; i < malts; i++) {
            parts.add(new GristPart(Malt.of(i == 0 ? "pale" : "caramel", 10 + 5 * i), new Mass(i == 0 ? 4 : 0.3)));
        }
        double kilograms = 4 + 0.3 * (malts - 1);
        mash = Mash.of(
                new Grist(parts),
                Liquor.titrated(new Volume(4 * kilograms), 3.2, 4.5, 7.6, 4.5, 0.9),
                new AcidAddition(Acids.get("lactic"), Estimate.exactly(2 * kilograms)));
    }

    @Benchmark
    public double mashPh() {
        return mash.ph();
    }

    @Benchmark
    public MashPrediction mashPrediction() {
        return MashPrediction.of(mash);
    }
}
