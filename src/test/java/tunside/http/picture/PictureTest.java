package tunside.http.picture;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Every example of an operation that has a picture, as picture and as JSON. */
@QuarkusTest
class PictureTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Pattern POINT = Pattern.compile("(-?[0-9.]+) (-?[0-9.]+)");

    private static final Map<String, String> PATHS = new LinkedHashMap<>();

    static {
        PATHS.put("evaluateCalibration", "/v1/calibration-evaluations");
        PATHS.put("judgePhReading", "/v1/ph-readings");
        PATHS.put("predictMash", "/v1/mash-predictions");
        PATHS.put("computeAcidDose", "/v1/acid-doses");
    }

    /** A question that is answered, and its answer as JSON. */
    record Asked(String operation, String name, String body, JsonNode answer) {
        JsonNode result() {
            return answer.get("result");
        }
    }

    /** A mark of a picture: the values that it carries, and where it is drawn. */
    record Mark(Map<String, String> values, double left, double top, double right, double bottom) {
        double number(String name) {
            return Double.parseDouble(values.get(name));
        }
    }

    private static Response ask(String path, String body, String accept) {
        return given().contentType("application/json").accept(accept).body(body).post(path);
    }

    private static List<Asked> examples() throws IOException {
        List<Asked> asked = new ArrayList<>();
        for (String operation : PATHS.keySet()) {
            JsonNode examples = MAPPER.readTree(
                    Path.of("src/main/resources/examples", operation + ".json").toFile());
            for (Map.Entry<String, JsonNode> example : examples.properties()) {
                if (example.getValue().get("status").asInt() == 200) {
                    asked.add(new Asked(
                            operation,
                            example.getKey(),
                            example.getValue().get("request").toString(),
                            example.getValue().get("response")));
                }
            }
        }
        return asked;
    }

    private static byte[] svg(Asked asked) {
        Response response = ask(PATHS.get(asked.operation), asked.body, "image/svg+xml");
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        assertThat(response.contentType()).startsWith("image/svg+xml");
        assertThat(response.header("Content-Security-Policy")).startsWith("default-src 'none'");
        return response.asByteArray();
    }

    private static Document parse(byte[] svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg));
    }

    private static List<Element> all(Document picture, String name) {
        NodeList found = picture.getElementsByTagNameNS("http://www.w3.org/2000/svg", name);
        return IntStream.range(0, found.getLength())
                .mapToObj(i -> (Element) found.item(i))
                .toList();
    }

    private static List<Mark> marks(Document picture, String series) {
        List<Mark> marks = new ArrayList<>();
        for (Element group : all(picture, "g")) {
            if (group.getAttribute("data-series").equals(series)) {
                Map<String, String> values = new LinkedHashMap<>();
                for (int i = 0; i < group.getAttributes().getLength(); i++) {
                    String name = group.getAttributes().item(i).getNodeName();
                    values.put(name.replace("data-", ""), group.getAttribute(name));
                }
                List<MatchResult> points = POINT.matcher(
                                ((Element) group.getElementsByTagName("path").item(0)).getAttribute("d"))
                        .results()
                        .toList();
                double[] x = points.stream()
                        .mapToDouble(point -> Double.parseDouble(point.group(1)))
                        .sorted()
                        .toArray();
                double[] y = points.stream()
                        .mapToDouble(point -> Double.parseDouble(point.group(2)))
                        .sorted()
                        .toArray();
                marks.add(new Mark(values, x[0], y[0], x[x.length - 1], y[y.length - 1]));
            }
        }
        return marks;
    }

    /** Marks stand where their values belong: places on the page go with the values along one straight scale. */
    private static void assertToScale(List<Mark> marks) {
        for (String axis : List.of("x", "y")) {
            Comparator<Mark> byValue = Comparator.comparingDouble(mark -> mark.number(axis));
            Mark first = marks.stream().min(byValue).orElseThrow();
            Mark last = marks.stream().max(byValue).orElseThrow();
            double scale = (place(last, axis) - place(first, axis)) / (last.number(axis) - first.number(axis));
            if (last.number(axis) == first.number(axis)) {
                continue;
            }
            for (Mark mark : marks) {
                assertThat(place(mark, axis))
                        .isCloseTo(place(first, axis) + scale * (mark.number(axis) - first.number(axis)), within(0.05));
            }
        }
    }

    private static double place(Mark mark, String axis) {
        return axis.equals("x") ? (mark.left + mark.right) / 2 : (mark.top + mark.bottom) / 2;
    }

    private static List<String> values(List<Mark> marks, String... names) {
        return marks.stream()
                .map(mark -> String.join(
                        " ",
                        Stream.of(names)
                                .map(name -> String.valueOf(mark.number(name)))
                                .toList()))
                .toList();
    }

    /** The same numbers from the JSON, by pointers relative to each item. */
    private static List<String> values(JsonNode items, String... pointers) {
        return StreamSupport.stream(items.spliterator(), false)
                .map(item -> String.join(
                        " ",
                        Stream.of(pointers)
                                .map(pointer -> String.valueOf(item.at(pointer).asDouble()))
                                .toList()))
                .toList();
    }

    private static void assertNumbers(Asked asked, Document picture) {
        JsonNode result = asked.result();
        switch (asked.operation) {
            case "evaluateCalibration" -> {
                assertThat(values(marks(picture, "reading"), "x", "y"))
                        .isEqualTo(values(result.get("readings"), "/bufferPh", "/potential/value"));
                assertThat(values(marks(picture, "residual"), "x", "y"))
                        .isEqualTo(values(result.get("readings"), "/bufferPh", "/residual/value"));
                assertThat(marks(picture, "expected").get(0).number("x"))
                        .isEqualTo(result.at("/expected/ph").asDouble());
                assertToScale(marks(picture, "reading"));
                assertToScale(marks(picture, "residual"));
            }
            case "predictMash" -> {
                assertThat(values(marks(picture, "titration"), "x", "y"))
                        .isEqualTo(values(result.get("titration"), "/acidMeq", "/ph"));
                assertThat(values(marks(picture, "prediction"), "y", "low", "high"))
                        .containsExactly("%s %s %s"
                                .formatted(
                                        result.get("ph").asDouble(),
                                        result.at("/interval90/low").asDouble(),
                                        result.at("/interval90/high").asDouble()));
                assertThat(values(marks(picture, "share"), "x")).isEqualTo(values(result.get("contributions"), "/meq"));
                if (result.has("curve")) {
                    List<JsonNode> answered = StreamSupport.stream(
                                    result.at("/curve/points").spliterator(), false)
                            .filter(point -> point.has("ph"))
                            .toList();
                    assertThat(values(marks(picture, "varied"), "x", "y"))
                            .isEqualTo(values(MAPPER.valueToTree(answered), "/value", "/ph"));
                    assertToScale(marks(picture, "varied"));
                }
                List<Mark> both = new ArrayList<>(marks(picture, "titration"));
                both.addAll(1, marks(picture, "prediction"));
                assertToScale(both);
                assertBarsToScale(marks(picture, "share"));
            }
            case "judgePhReading" -> {
                List<Mark> read = new ArrayList<>(marks(picture, "reading"));
                read.addAll(marks(picture, "left-out"));
                read.sort(Comparator.comparingDouble(mark -> mark.number("x")));
                assertThat(values(read, "x", "y")).isEqualTo(values(result.at("/settling/course"), "/elapsedS", "/ph"));
                assertThat(marks(picture, "left-out")).hasSameSizeAs(result.at("/settling/leftOut"));
                assertThat(values(marks(picture, "heading-for"), "y", "low", "high"))
                        .isEqualTo(values(
                                MAPPER.createArrayNode().add(result.get("settling")),
                                "/headingFor",
                                "/low90",
                                "/high90"));
                assertThat(values(marks(picture, "at-20"), "x", "low", "high"))
                        .isEqualTo(
                                values(MAPPER.createArrayNode().add(result.get("at20")), "/ph", "/low90", "/high90"));
                assertToScale(read);
            }
            case "computeAcidDose" -> {
                List<JsonNode> read = StreamSupport.stream(
                                result.get("readings").spliterator(), false)
                        .filter(reading -> reading.has("ph"))
                        .toList();
                assertThat(values(marks(picture, "reading"), "x")).isEqualTo(values(MAPPER.valueToTree(read), "/ph"));
                assertThat(values(marks(picture, "now"), "x", "low", "high"))
                        .isEqualTo(values(MAPPER.createArrayNode().add(result.get("now")), "/ph", "/low90", "/high90"));
                List<Mark> stages = new ArrayList<>(marks(picture, "add-now"));
                assertThat(stages).hasSize(result.has("addNow") ? 1 : 0);
                stages.addAll(marks(picture, "later"));
                assertThat(values(stages, "x", "low", "high"))
                        .isEqualTo(values(result.get("stages"), "/expectedPh", "/low90", "/high90"));
                List<Mark> all = new ArrayList<>(marks(picture, "reading"));
                all.addAll(marks(picture, "now"));
                all.addAll(stages);
                assertToScale(all);
                assertThat(all(picture, "title").get(0).getTextContent().contains("add nothing")
                                || all(picture, "title").get(0).getTextContent().startsWith("Add nothing"))
                        .isEqualTo(!result.has("addNow"));
            }
            default -> throw new IllegalStateException(asked.operation);
        }
    }

    private static void assertBarsToScale(List<Mark> bars) {
        double scale = 0;
        for (Mark bar : bars) {
            double length = bar.right - bar.left;
            if (Math.abs(bar.number("x")) > 5) {
                scale = scale == 0 ? length / Math.abs(bar.number("x")) : scale;
                assertThat(length).isCloseTo(scale * Math.abs(bar.number("x")), within(0.3));
            }
        }
    }

    @TestFactory
    Stream<DynamicTest> aPictureShowsTheNumbersOfTheJson() throws IOException {
        return each(asked -> assertNumbers(asked, parse(svg(asked))));
    }

    @TestFactory
    Stream<DynamicTest> thePictureIsTheSameEachTime() throws IOException {
        return each(asked -> assertThat(svg(asked)).isEqualTo(svg(asked)));
    }

    @TestFactory
    Stream<DynamicTest> aPictureSaysInWordsWhatItShows() throws IOException {
        return each(asked -> {
            Document picture = parse(svg(asked));
            Element root = picture.getDocumentElement();
            assertThat(root.getAttribute("role")).isEqualTo("img");
            Element title = all(picture, "title").get(0);
            Element desc = all(picture, "desc").get(0);
            assertThat(root.getAttribute("aria-labelledby")).isEqualTo(title.getAttribute("id"));
            assertThat(root.getAttribute("aria-describedby")).isEqualTo(desc.getAttribute("id"));
            assertThat(title.getTextContent()).isNotBlank();
            JsonNode safety = asked.answer.get("safety");
            assertThat(desc.getTextContent())
                    .contains(safety.get(0).get("message").asText())
                    .contains(safety.get(safety.size() - 1).get("message").asText());
            for (JsonNode check : asked.answer.get("checks")) {
                if (check.get("outcome").asText().equals("stop")) {
                    assertThat(desc.getTextContent())
                            .contains(check.get("message").asText());
                }
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> textIsTextInsideThePage() throws IOException {
        return each(asked -> {
            Document picture = parse(svg(asked));
            String[] box = picture.getDocumentElement().getAttribute("viewBox").split(" ", -1);
            assertThat(all(picture, "image")).isEmpty();
            for (Element text : all(picture, "text")) {
                if (text.hasAttribute("x")) {
                    boolean bold = text.getAttribute("font-weight").equals("bold");
                    double width = new Lettering(Integer.parseInt(text.getAttribute("font-size")), bold)
                            .width(text.getTextContent());
                    double x = Double.parseDouble(text.getAttribute("x"));
                    double left = text.getAttribute("text-anchor").equals("middle") ? x - width / 2 : x;
                    assertThat(left).as(text.getTextContent()).isGreaterThanOrEqualTo(0);
                    assertThat(left + width).as(text.getTextContent()).isLessThanOrEqualTo(Double.parseDouble(box[2]));
                    assertThat(Double.parseDouble(text.getAttribute("y"))).isBetween(0.0, Double.parseDouble(box[3]));
                }
            }
        });
    }

    private interface Trial {
        void run(Asked asked) throws Exception;
    }

    private static Stream<DynamicTest> each(Trial test) throws IOException {
        return examples().stream()
                .map(asked -> DynamicTest.dynamicTest(asked.operation + ": " + asked.name, () -> test.run(asked)));
    }

    @Test
    void jsonIsTheDefaultAndOnlyAPictureAskedForIsAPicture() throws IOException {
        for (Asked asked : examples()) {
            String path = PATHS.get(asked.operation);
            for (String accept : List.of(
                    "*/*",
                    "application/json",
                    "application/*",
                    "image/png, */*;q=0.1",
                    "application/json, image/svg+xml;q=0.5")) {
                Response response = ask(path, asked.body, accept);
                assertThat(response.statusCode()).as(accept).isEqualTo(200);
                assertThat(response.contentType()).as(accept).startsWith("application/json");
            }
            for (String accept : List.of("image/svg+xml", "image/*", "application/json;q=0.5, image/svg+xml")) {
                assertThat(ask(path, asked.body, accept).contentType())
                        .as(accept)
                        .startsWith("image/svg+xml");
            }
            Response refused = ask(path, asked.body, "image/png");
            assertThat(refused.statusCode()).isEqualTo(406);
            assertThat(refused.contentType()).isEqualTo("application/problem+json");
        }
    }

    @Test
    void aFaultIsAProblemWhateverWasAskedFor() {
        PATHS.values().forEach(path -> {
            Response response = ask(path, "{\"nonsense\": \"</script>\"}", "image/svg+xml");
            assertThat(response.statusCode()).isEqualTo(400);
            assertThat(response.contentType()).isEqualTo("application/problem+json");
        });
    }

    @TestFactory
    Stream<DynamicTest> picturesToLookAt() throws IOException {
        Path folder = Path.of("target/pictures");
        Files.createDirectories(folder);
        return each(asked -> Files.writeString(
                folder.resolve(asked.operation + "-" + asked.name + ".svg"),
                new String(svg(asked), StandardCharsets.UTF_8)));
    }
}
