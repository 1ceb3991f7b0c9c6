package tunside.http.ndjson;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tunside.bench.Json;
import tunside.http.calibration.CalibrationEvaluationResource;
import tunside.http.dilution.AcidDilutionResource;
import tunside.http.dosing.AcidDoseResource;
import tunside.http.json.BodyReader;
import tunside.http.mash.MashPredictionResource;
import tunside.http.plan.MashPlanResource;
import tunside.http.reading.PhReadingResource;
import tunside.http.review.BrewReviewResource;
import tunside.http.vary.Variations;
import tunside.http.water.WaterAnalysisResource;

/**
 * A question from its bytes to the bytes of its answer, without the network: and, to measure by, its bare echo, which reads
 * the same question as any JSON and writes the same answer as any JSON.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class EndpointBenchmark {
    private static final long WARM_UP_NS = 10_000_000_000L;

    @Param({
        "predictMash",
        "evaluateCalibration",
        "computeAcidDose",
        "judgePhReading",
        "analyseWater",
        "diluteAcid",
        "planMash",
        "reviewBrews"
    })
    public String operation;

    private ObjectMapper mapper;
    private BodyReader reader;
    private Computation computation;
    private byte[] question;
    private JsonNode answer;

    @Setup
    public void read() throws IOException {
        mapper = Json.mapper();
        reader = Json.reader(mapper);
        Object resource = switch (operation) {
            case "predictMash" -> new MashPredictionResource(new Variations(mapper, reader));
            case "evaluateCalibration" -> new CalibrationEvaluationResource();
            case "computeAcidDose" -> new AcidDoseResource();
            case "judgePhReading" -> new PhReadingResource();
            case "analyseWater" -> new WaterAnalysisResource();
            case "diluteAcid" -> new AcidDilutionResource();
            case "planMash" -> new MashPlanResource();
            case "reviewBrews" -> new BrewReviewResource();
            default -> throw new IllegalArgumentException(operation);
        };
        computation = Computation.of(resource.getClass(), () -> resource).get(0);
        JsonNode example = Json.example(new ObjectMapper(), operation);
        question = mapper.writeValueAsBytes(example.get("request"));
        answer = example.get("response");
        long start = System.nanoTime();
        while (System.nanoTime() - start < WARM_UP_NS) { // it is far more code than the others run
            endpoint();
        }
    }

    @Benchmark
    public byte[] endpoint() throws IOException {
        return mapper.writeValueAsBytes(computation.answer(reader.read(question, computation.request())));
    }

    @Benchmark
    public byte[] echo() throws IOException {
        JsonNode read = mapper.readTree(question);
        return read.isObject() ? mapper.writeValueAsBytes(answer) : question;
    }
}
