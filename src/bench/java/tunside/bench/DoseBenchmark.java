package tunside.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Salts;
import tunside.dosing.Bases;
import tunside.dosing.DoseAdvice;
import tunside.dosing.DoseAim;
import tunside.dosing.DoseQuestion;
import tunside.dosing.MashDose;
import tunside.dosing.PastAddition;
import tunside.dosing.PhReading;
import tunside.dosing.Supply;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Volume;

/** A staged dose into a mash, after a number of additions that were each read. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class DoseBenchmark {
    @Param({"0", "1", "2", "3", "8"})
    public int readings;

    private DoseQuestion question;

    @Setup
    public void draw() {
        MashDose mash = new MashDose(Mash.of(
                new Grist(List.of(
                        new GristPart(Malt.of("pale"), new Mass(4.2)), new GristPart(Malt.of("munich"), new Mass(0.6)))),
                Liquor.titrated(new Volume(16), 2.6, 4.3, 7.6, 3.1, 0.7)));
        Supply acid = mash.acid(AcidProduct.of(Acids.get("phosphoric"), Strength.percent(10)), 0.1, 1e6);
        List<PastAddition> history = new ArrayList<>();
        for (int i = 1; i <= readings; i++) {
            history.add(
                    new PastAddition(acid.reagent(), 4, Optional.of(new PhReading(5.85 - 0.03 * i, 0.03))));
        }
        question = DoseQuestion.of(
                mash,
                new PhReading(5.85, 0.03),
                0.02,
                history,
                new DoseAim(5.4, 5.3, 5.5, DoseAim.USUAL_RISK),
                Optional.of(acid),
                mash.base(Salts.get(Bases.USUAL), 0.1));
    }

    @Benchmark
    public DoseAdvice stagedDose() {
        return DoseAdvice.of(question, List.of());
    }
}
