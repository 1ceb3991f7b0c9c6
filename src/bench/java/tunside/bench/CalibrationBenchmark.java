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
import tunside.electrode.Buffer;
import tunside.electrode.BufferCup;
import tunside.electrode.BufferReading;
import tunside.electrode.Buffers;
import tunside.electrode.CalibrationEvaluation;
import tunside.electrode.CalibrationSession;
import tunside.electrode.NernstSlope;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

/** The judgement of an electrode, every suspected cause tried. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class CalibrationBenchmark {
    private static final Temperature ROOM = new Temperature(25);

    @Param({"2", "3", "4", "8", "16"})
    public int readings;

    private CalibrationSession session;

    @Setup
    public void draw() {
        List<Buffer> buffers = Buffers.all().values().stream()
                .filter(buffer -> buffer.ph(ROOM) > 3 && buffer.ph(ROOM) < 10.5)
                .toList();
        List<BufferReading> list = new ArrayList<>();
        for (int i = 0; i < readings; i++) {
            Buffer buffer = buffers.get(i * (buffers.size() - 1) / (readings - 1));
            double millivolts = 4 + 0.3 * (i % 3) - 0.97 * NernstSlope.millivoltsPerPh(ROOM) * (buffer.ph(ROOM) - 7);
            list.add(new BufferReading(BufferCup.of(buffer), ROOM, new Potential(millivolts), Optional.empty()));
        }
        session = CalibrationSession.ofPotentials(list);
    }

    @Benchmark
    public CalibrationEvaluation calibrationEvaluation() {
        return CalibrationEvaluation.of(session);
    }
}
