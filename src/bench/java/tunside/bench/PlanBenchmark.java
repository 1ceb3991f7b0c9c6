package tunside.bench;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
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
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MashConditions;
import tunside.mash.MashModel;
import tunside.mash.plan.IonWant;
import tunside.mash.plan.PhAim;
import tunside.mash.plan.PlanAnswer;
import tunside.mash.plan.PlanQuestion;
import tunside.mash.plan.PlanSupply;
import tunside.quantity.Alkalinity;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;
import tunside.water.Water;
import tunside.water.WaterReport;

/** A plan of additions to a pH and two ions, from a number of supplies at hand; and one that cannot meet all. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class PlanBenchmark {
    private static final double LITRES = 20;

    @Param({"2", "5", "10"})
    public int supplies;

    private PlanQuestion question;
    private PlanQuestion outOfReach;

    @Setup
    public void draw() {
        Water water = Water.of(new WaterReport(
                Map.of(
                        Ion.CALCIUM, 0.0016,
                        Ion.MAGNESIUM, 0.0004,
                        Ion.SODIUM, 0.0009,
                        Ion.CHLORIDE, 0.0008,
                        Ion.SULFATE, 0.0003),
                Optional.of(new Alkalinity(3.4)),
                OptionalDouble.of(4.3),
                OptionalDouble.of(7.6),
                new Temperature(20)));
        Mash mash = new Mash(
                new Grist(List.of(
                        new GristPart(Malt.of("pale"), new Mass(5)),
                        new GristPart(Malt.of("caramel", 120), new Mass(0.4)))),
                Liquor.of(new Volume(LITRES), water),
                List.of(),
                MashConditions.UNSTATED,
                MashModel.standard());
        List<PlanSupply> atHand = List.of(
                acid("lactic", 80, 30),
                salt("gypsum"),
                salt("calcium-chloride-dihydrate"),
                acid("phosphoric", 10, 200),
                new PlanSupply.OfWater("/water", Water.distilled(), 0.5, LITRES),
                salt("epsom-salt"),
                salt("sodium-bicarbonate"),
                salt("sodium-chloride"),
                acid("hydrochloric", 10, 50),
                salt("calcium-hydroxide"));
        List<PlanSupply> some = atHand.subList(0, supplies);
        PhAim aim = new PhAim(5.4, 5.3, 5.5);
        IonWant calcium = want(Ion.CALCIUM, 60, 110);
        IonWant sulfate = want(Ion.SULFATE, 60, 150);
        IonWant tooMuch = want(Ion.MAGNESIUM, 200, 250);
        question = new PlanQuestion(mash, water, aim, some, List.of(calcium, sulfate), 400);
        outOfReach = new PlanQuestion(mash, water, aim, some, List.of(calcium, sulfate, tooMuch), 400);
    }

    private static PlanSupply acid(String id, double percent, double most) {
        return new PlanSupply.OfAcid("/" + id, AcidProduct.of(Acids.get(id), Strength.percent(percent)), 0.5, most);
    }

    private static PlanSupply salt(String id) {
        return new PlanSupply.OfSalt("/" + id, Salts.get(id), 0.1, LITRES);
    }

    private static IonWant want(Ion ion, double low, double high) {
        return IonWant.of(ion, OptionalDouble.of(low), OptionalDouble.of(high), "/" + ion.symbol());
    }

    @Benchmark
    public PlanAnswer plan() {
        return PlanAnswer.of(question);
    }

    @Benchmark
    public PlanAnswer planOutOfReach() {
        return PlanAnswer.of(outOfReach);
    }
}
