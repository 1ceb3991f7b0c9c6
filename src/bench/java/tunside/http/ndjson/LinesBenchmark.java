package tunside.http.ndjson;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import tunside.bench.Json;
import tunside.http.json.BodyReader;
import tunside.http.mash.MashPredictionResource;
import tunside.http.vary.Variations;
import tunside.http.watch.AnswerCounts;

/** Whole bodies of lines, each the shortest mash there is, in a heap that would not hold the answers of the longest. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 3)
@Fork(jvmArgsAppend = "-Xmx64m")
public class LinesBenchmark {
    private static final int PIECE = 8192;
    private static final int LINES_TO_WARM_UP = 20_000;
    private static final byte[] LINE =
            "{\"grist\":[{\"malt\":\"pale\",\"mass\":{\"value\":5,\"unit\":\"kg\"}}],\"liquor\":{\"volume\":{\"value\":20,\"unit\":\"L\"}}}\n"
                    .getBytes(StandardCharsets.UTF_8);

    @Param({"100", "1000", "10000", "100000"})
    public int lines;

    private ObjectMapper mapper;
    private BodyReader reader;
    private Computation computation;
    private AnswerCounts counts;

    @Setup
    public void warmUp() {
        mapper = Json.mapper();
        reader = Json.reader(mapper);
        MashPredictionResource resource = new MashPredictionResource(new Variations(mapper, reader));
        computation = Computation.of(MashPredictionResource.class, () -> resource).get(0);
        counts = new AnswerCounts(new SimpleMeterRegistry());
        answer(LINES_TO_WARM_UP);
    }

    @Benchmark
    public long ndjsonBody() {
        return answer(lines);
    }

    /** Pieces of the body as a connection brings them; bytes of the answers. */
    private long answer(int count) {
        LineAnswers answers = new LineAnswers(computation, reader, mapper, counts);
        byte[] piece = new byte[PIECE];
        long total = (long) count * LINE.length;
        long sent = 0;
        long answered = 0;
        while (!answers.isFinished()) {
            int length = (int) Math.min(PIECE, total - sent);
            for (int i = 0; i < length; i++) {
                piece[i] = LINE[(int) ((sent + i) % LINE.length)];
            }
            sent += length;
            answers.add(Arrays.copyOf(piece, length));
            if (sent == total) {
                answers.end();
            }
            for (byte[] next = answers.next(); next.length > 0; next = answers.next()) {
                answered += next.length;
            }
        }
        if (answered < 1000L * count) {
            throw new IllegalStateException("only %d bytes for %d lines".formatted(answered, count));
        }
        return answered;
    }
}
