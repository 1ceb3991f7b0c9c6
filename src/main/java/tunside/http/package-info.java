/**
 * The service's face: maps requests to the science and answers to JSON; never computes.
 *
 * <p>How to add a capability {@code X} at {@code /v1/xs}, in its own sub-package:
 *
 * <ol>
 *   <li>{@code XRequest}: a record. Every member boxed, with {@code @Schema(description)} and its bounds ({@code
 *       @NotNull}, {@code @DecimalMin/@DecimalMax}, {@code @Size}, {@code @Valid} on nested records and list items).
 *       Quantities are the records of {@code http.quantity}. Enums are domain enums; they are written in lower case with
 *       hyphens, or by their {@link tunside.quantity.Symbol}.
 *   <li>{@code XResponse(XResult result, List<Check> checks, List<SafetyAdvice> safety, Basis basis)}, flat, optional
 *       members null (left out of the JSON).
 *   <li>{@code XMapper}: start with {@code Place place = Place.root()}, build domain values at {@code
 *       place.member("grist").item(2)} so that every fault gets its pointer, {@code place.stopIfFaulty()}, compute, round
 *       once with {@code Rounded}. Findings become checks with {@code Checks.of(findings)}; their words stand in {@code
 *       reference/checks-<package>.csv}, whose name is listed in {@code Checks}. Valid but unanswerable: throw {@code
 *       UnanswerableException}.
 *   <li>{@code XResource}: one statement a method, {@code @NonBlocking} if it takes microseconds. The bodies are read and
 *       validated by {@code json.BodyReader}: no {@code @Valid} on the parameter. {@code @Tag}, {@code @Operation} with
 *       operationId, summary and description. The problem answers are added to every operation by {@code
 *       contract.ContractFilter}. A POST method whose one
 *       parameter is its body is found by {@code ndjson.NdjsonRoutes} and takes many questions, one a line, as well.
 *   <li>An answer that is worth seeing gets a class in {@code picture}, listed in {@code picture.Pictures}, and a second
 *       method {@code show} in its resource, {@code @Produces("image/svg+xml")} and hidden from the contract's generator, that
 *       returns {@code Answered}; {@code contract.FormsContract} describes it. A sheet to print is
 *       the same with {@code sheet} and a method {@code print}.
 *   <li>{@code src/main/resources/examples/<operationId>.json}: an object of named examples {@code {"summary", "request"
 *       or "query", "status", "response"}}. {@code mvn test -Dtest=ExamplesTest -Dexamples.record=true} fills in the
 *       responses; read them before you commit. {@code mvn test -Dtest=ContractTest -Dcontract.record=true} writes the
 *       contract.
 *   <li>A table is a {@code GET} that returns {@code TableAnswers.of(request, body)}, which adds the ETag.
 * </ol>
 */
package tunside.http;
