package tunside.bench;

import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.util.Statistics;

/**
 * Runs the benchmarks and prints them as one table; an argument is a pattern of those to run with the echo. Times are
 * medians of single calls, and the best of a few whole bodies of lines: what else the machine does touches them least.
 */
public final class Table {
    private static final String ECHO = "echo";
    private static final Map<String, String> ECHO_OF = Map.of(
            "calibrationEvaluation", "evaluateCalibration",
            "stagedDose", "computeAcidDose",
            "plan", "planMash",
            "planOutOfReach", "planMash");

    private Table() {}

    /** One line of the table. */
    private record Row(String name, String size, double microseconds, double kilobytes) {}

    public static void main(String... args) throws RunnerException {
        OptionsBuilder options = new OptionsBuilder();
        for (String pattern : args.length == 0 || args[0].isBlank() ? new String[] {".*"} : args) {
            options.include(pattern);
        }
        options.include("EndpointBenchmark.echo");
        Collection<RunResult> results = new Runner(options.forks(1)
                        .warmupIterations(3)
                        .warmupTime(TimeValue.seconds(1))
                        .measurementIterations(5)
                        .measurementTime(TimeValue.seconds(1))
                        .addProfiler(GCProfiler.class)
                        .build())
                .run();
        print(results.stream().map(Table::row).toList());
    }

    private static Row row(RunResult result) {
        BenchmarkParams params = result.getParams();
        String name = params.getBenchmark().substring(params.getBenchmark().lastIndexOf('.') + 1);
        Map<String, String> sizes = new LinkedHashMap<>();
        params.getParamsKeys().forEach(key -> sizes.put(key, params.getParam(key)));
        double bytes = result.getSecondaryResults().containsKey("gc.alloc.rate.norm")
                ? result.getSecondaryResults().get("gc.alloc.rate.norm").getScore()
                : 0;
        boolean aLine = sizes.containsKey("lines");
        double share = aLine ? Double.parseDouble(sizes.get("lines")) : 1;
        String size = String.join(" ", sizes.values()) + " " + String.join(" ", sizes.keySet());
        Statistics times = result.getPrimaryResult().getStatistics();
        return new Row(
                aLine ? "ndjson, per line" : name,
                sizes.containsKey("operation") ? sizes.get("operation") : size,
                aLine ? times.getMin() / share : times.getPercentile(50),
                bytes / share / 1000);
    }

    private static void print(List<Row> rows) {
        Map<String, Double> echoes = new LinkedHashMap<>();
        rows.stream().filter(row -> row.name.equals(ECHO)).forEach(row -> echoes.put(row.size, row.microseconds));
        System.out.printf(
                "%n| what | size | µs | kB allocated | times the echo of | |%n|---|---|---:|---:|---:|---|%n");
        rows.stream().sorted(Comparator.comparing(Row::name)).forEach(row -> {
            String echo = echoes.containsKey(row.size) ? row.size : ECHO_OF.getOrDefault(row.name, "predictMash");
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %s | %.2f | %.1f | %.2f | %s |%n",
                    row.name,
                    row.size,
                    row.microseconds,
                    row.kilobytes,
                    row.microseconds / echoes.get(echo),
                    echo);
        });
    }
}
