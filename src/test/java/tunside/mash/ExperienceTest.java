package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.zip.CRC32;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.quantity.Volume;

class ExperienceTest {
    private static final LearntParameter BIAS = LearntParameter.of(LearntQuantity.MALT_TYPES_BIAS, -0.1);
    private static final LearntParameter SCALE = LearntParameter.of(LearntQuantity.BUFFERING_SCALE, 0.2);
    private static final LearntParameter PALE = LearntParameter.of(LearntQuantity.MALT_OFFSET, "pale", 0.05);
    private static final Experience LEARNT = new Experience(
            5,
            List.of(BIAS, SCALE, PALE),
            List.of(List.of(0.004, 0.001, -0.003), List.of(0.001, 0.01, 0.0), List.of(-0.003, 0.0, 0.005)));

    private static Mash mash(Experience experience, String... malts) {
        List<GristPart> parts = Arrays.stream(malts)
                .map(malt -> Mashes.part(Malt.of(malt), 2.5))
                .toList();
        return Mash.of(new Grist(parts), Liquor.titrated(new Volume(16), 3.2, 4.5, 7.6, 4.5, 0.9))
                .withModel(MashModel.standard().withExperience(experience));
    }

    @Test
    void anExperienceOfNoBrewChangesNoBit() {
        for (Mash mash : List.of(Mashes.pale(), Mashes.porter(), Mashes.chalky())) {
            MashPrediction published = MashPrediction.of(mash);
            for (Experience nothing : List.of(Experience.NONE, Experience.prior(MashModel.standard(), List.of()))) {
                MashPrediction same =
                        MashPrediction.of(mash.withModel(MashModel.standard().withExperience(nothing)));
                assertThat(same).isEqualTo(published);
            }
        }
    }

    @Test
    void splittingTheErrorOfAMaltIntoItsPartsKeepsTheWhole() {
        Experience prior = Experience.prior(
                MashModel.standard(),
                List.of(Malt.of("pale"), Malt.of("caramel"), Malt.of("roasted"), Malt.of("munich")));
        MashPrediction published = MashPrediction.of(Mashes.porter());
        MashPrediction split =
                MashPrediction.of(Mashes.porter().withModel(MashModel.standard().withExperience(prior)));
        assertThat(split.ph()).isCloseTo(published.ph(), within(1e-9));
        assertThat(split.standardUncertainty()).isCloseTo(published.standardUncertainty(), within(1e-9));
        assertThat(split.influences()).hasSize(published.influences().size() + 7);
    }

    @Test
    void aPriorHoldsThePublishedValuesOnly() {
        Experience prior = Experience.prior(MashModel.standard(), List.of(Malt.of("caramel", 60), Malt.of("pale")));
        assertThat(prior.brews()).isZero();
        assertThat(prior.parameters())
                .containsExactly(
                        LearntParameter.of(LearntQuantity.MODEL_BIAS, 0),
                        LearntParameter.of(LearntQuantity.MALT_TYPES_BIAS, 0),
                        LearntParameter.of(LearntQuantity.BUFFERING_SCALE, 0),
                        LearntParameter.of(LearntQuantity.MALT_OFFSET, "pale", 0),
                        LearntParameter.of(LearntQuantity.PRODUCT_OFFSET, "pale", 0),
                        LearntParameter.of(LearntQuantity.MALT_OFFSET, "caramel", 0));
        assertThat(prior.estimate(0).standardUncertainty()).isCloseTo(0.03, within(1e-12));
        assertThat(prior.estimate(1).standardUncertainty()).isCloseTo(0.10, within(1e-12));
        assertThat(prior.estimate(2).standardUncertainty()).isCloseTo(0.20, within(1e-12));
        assertThat(prior.covariance().get(3).get(4)).isZero();
        assertThat(prior.knows(MaltClasses.get("pale"))).isTrue();
        assertThat(prior.knows(MaltClasses.get("munich"))).isFalse();
    }

    /** By hand from malts.csv: n malts scatter by s, so their mean errs by s²/n; 0.04 comes anew with each brew. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        // 0.09²/5, and 0.09² less 0.04²
        "pale, 0.00162, 0.0065",
        // 0.07²/5, and 0.07² less 0.04²
        "roasted, 0.00098, 0.0033",
        // one malt only: half each of 2 times 0.09² less 0.04²
        "wheat, 0.0073, 0.0073",
        // nothing published: half each of 0.25² less 0.04²
        "rye, 0.03045, 0.03045",
        // follows colour: half of 0.12² times 12/11, and that half less 0.04²
        "caramel, 0.0078545454545, 0.0062545454545"
    })
    void aMaltScattersByItsClassItsProductAndItsBrew(String malt, double ofClass, double ofProduct) {
        MaltClass maltClass = MaltClasses.get(malt);
        MashModel model = MashModel.standard();
        assertThat(Math.pow(model.classOffsetUncertainty(maltClass), 2)).isCloseTo(ofClass, within(1e-12));
        assertThat(Math.pow(model.productOffsetUncertainty(maltClass), 2)).isCloseTo(ofProduct, within(1e-12));
        assertThat(ofClass + ofProduct + 0.04 * 0.04)
                .isCloseTo(Math.pow(maltClass.distilledWaterPh().lotUncertainty(), 2), within(1e-12));
    }

    @Test
    void everyClassLeavesSomethingToItsProductsAndToEachBrew() {
        for (MaltClass maltClass : MaltClasses.all().values()) {
            double ofClass = MashModel.standard().classOffsetUncertainty(maltClass);
            double ofProduct = MashModel.standard().productOffsetUncertainty(maltClass);
            double lot = maltClass.distilledWaterPh().lotUncertainty();
            assertThat(ofClass).as(maltClass.id()).isPositive();
            assertThat(ofProduct).as(maltClass.id()).isPositive();
            assertThat(Math.hypot(ofClass, ofProduct)).as(maltClass.id()).isLessThan(lot);
        }
    }

    @Test
    void aPriorHoldsEachNamedProductOnceWhateverTheirOrder() {
        Malt hill = Malt.of("pale").named("hill");
        Malt river = Malt.of("pale").named("river");
        Malt light = Malt.of("caramel", 50).named("light");
        Experience prior = Experience.prior(
                MashModel.standard(), List.of(river, light, Malt.of("pale"), hill, river, Malt.of("caramel", 60)));
        assertThat(prior.parameters().subList(3, prior.parameters().size()))
                .containsExactly(
                        LearntParameter.of(LearntQuantity.MALT_OFFSET, "pale", 0),
                        new LearntParameter(LearntQuantity.PRODUCT_OFFSET, "pale", "hill", 0),
                        new LearntParameter(LearntQuantity.PRODUCT_OFFSET, "pale", "river", 0),
                        LearntParameter.of(LearntQuantity.MALT_OFFSET, "caramel", 0),
                        new LearntParameter(LearntQuantity.PRODUCT_OFFSET, "caramel", "light", 0));
        assertThat(prior.parameters().get(prior.indexOfProduct(river)).product())
                .isEqualTo("river");
        assertThat(prior.indexOfProduct(Malt.of("pale"))).isEqualTo(-1);
        assertThat(prior.indexOfProduct(Malt.of("pale").named("valley"))).isEqualTo(-1);
        assertThat(prior.parameters().get(4).subject()).isEqualTo("pale, hill");
        assertThat(prior.parameters().get(3).subject()).isEqualTo("pale");
    }

    /** Distilled water at the class's own ratio, so that the mash lands on the malt's own pH. */
    private static MashPrediction ownPh(Malt malt, Experience experience) {
        return MashPrediction.of(Mash.of(new Grist(List.of(Mashes.part(malt, 5))), Liquor.distilled(new Volume(20)))
                .withModel(MashModel.standard().withExperience(experience)));
    }

    @Test
    void aProductTakesWhatWasLearntAboutItAndAnotherWhatItsClassHasInCommon() {
        Experience experience = new Experience(
                4,
                List.of(PALE, new LearntParameter(LearntQuantity.PRODUCT_OFFSET, "pale", "river", -0.12)),
                List.of(List.of(0.0009, 0.0), List.of(0.0, 0.0004)));
        MashPrediction published = ownPh(Malt.of("pale"), Experience.NONE);
        MashPrediction river = ownPh(Malt.of("pale").named("river"), experience);
        MashPrediction hill = ownPh(Malt.of("pale").named("hill"), experience);
        MashPrediction unnamed = ownPh(Malt.of("pale"), experience);
        assertThat(river.ph()).isCloseTo(5.72 + 0.05 - 0.12, within(1e-6));
        assertThat(hill.ph()).isCloseTo(5.72 + 0.05, within(1e-6));
        assertThat(unnamed.ph()).isEqualTo(hill.ph());
        assertThat(unnamed.standardUncertainty()).isCloseTo(hill.standardUncertainty(), within(1e-12));
        // of the published variance 0.00162 of the class and 0.0065 of the product become 0.0009 and 0.0004
        double variance = Math.pow(published.standardUncertainty(), 2);
        assertThat(Math.pow(river.standardUncertainty(), 2))
                .isCloseTo(variance - 0.00162 - 0.0065 + 0.0009 + 0.0004, within(1e-6));
        assertThat(Math.pow(hill.standardUncertainty(), 2)).isCloseTo(variance - 0.00162 + 0.0009, within(1e-6));
    }

    @Test
    void aMaltWithoutANameIsTheProductThatWasLearntAboutWithoutOne() {
        Experience experience = new Experience(
                4,
                List.of(PALE, LearntParameter.of(LearntQuantity.PRODUCT_OFFSET, "pale", -0.12)),
                List.of(List.of(0.0009, -0.0001), List.of(-0.0001, 0.0004)));
        assertThat(ownPh(Malt.of("pale"), experience).ph()).isCloseTo(5.72 - 0.07, within(1e-6));
        assertThat(ownPh(Malt.of("pale").named("river"), experience).ph()).isCloseTo(5.77, within(1e-6));
    }

    @Test
    void aNameAloneChangesNoPrediction() {
        assertThat(ownPh(Malt.of("pale").named("river"), Experience.NONE).ph())
                .isEqualTo(ownPh(Malt.of("pale"), Experience.NONE).ph());
        assertThat(ownPh(Malt.of("pale").named("river"), Experience.NONE).standardUncertainty())
                .isEqualTo(ownPh(Malt.of("pale"), Experience.NONE).standardUncertainty());
    }

    @Test
    void theMeansShiftThePrediction() {
        double published = mash(Experience.NONE, "pale").ph();
        Experience shift = new Experience(3, List.of(BIAS, PALE), List.of(List.of(0.01, 0.0), List.of(0.0, 0.01)));
        Mash distilled = Mash.of(new Grist(List.of(Mashes.part(Malt.of("pale"), 5))), Liquor.distilled(new Volume(20)));
        assertThat(distilled
                        .withModel(MashModel.standard().withExperience(shift))
                        .ph())
                .isCloseTo(5.72 - 0.1 + 0.05, within(1e-6));
        assertThat(mash(shift, "pale").ph()).isLessThan(published - 0.03);
        MashModel model = MashModel.standard().withExperience(LEARNT);
        assertThat(model.bufferingScale().value()).isCloseTo(Math.exp(0.2), within(1e-12));
        assertThat(model.bufferingScale().standardUncertainty()).isCloseTo(0.1 * Math.exp(0.2), within(1e-12));
        assertThat(model.biasOfMaltTypes()).isEqualTo(new Estimate(-0.1, Math.sqrt(0.004)));
        assertThat(model.bias()).isEqualTo(MashModel.standard().bias());
    }

    @Test
    void aMaltThatWasMeasuredOrIsNotInTheExperienceKeepsItsOwnPh() {
        Experience offset = new Experience(1, List.of(PALE), List.of(List.of(0.001)));
        assertThat(mash(offset, "munich"))
                .satisfies(mash -> assertThat(mash.ph())
                        .isEqualTo(mash(Experience.NONE, "munich").ph()));
        Mash measured = Mash.of(
                new Grist(List.of(Mashes.part(Mashes.measured("pale", 5.7, 38), 5))), Liquor.distilled(new Volume(20)));
        assertThat(MashPrediction.of(measured.withModel(MashModel.standard().withExperience(offset)))
                        .standardUncertainty())
                .isEqualTo(MashPrediction.of(measured).standardUncertainty());
    }

    @Test
    void covariancesAreCarriedLikeRandomDrawsOfThem() {
        Mash mash = mash(LEARNT, "pale", "munich");
        MashPrediction prediction = MashPrediction.of(mash);
        PhFunction function = PhFunction.of(mash);
        List<UncertainInput> inputs = function.inputs();
        double[][] root = new CholeskyDecomposition(new Array2DRowRealMatrix(LEARNT.covarianceMatrix()))
                .getL()
                .getData();
        SplittableRandom random = new SplittableRandom(7);
        int draws = 20_000;
        double[] ph = new double[draws];
        for (int i = 0; i < draws; i++) {
            double[] z = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
            double[] values = function.centre();
            for (int j = 0; j < values.length; j++) {
                UncertainInput input = inputs.get(j);
                values[j] = switch (input.id()) {
                    case "malt-types-bias" -> -0.1 + root[0][0] * z[0];
                    case "buffering-scale" -> Math.exp(0.2 + root[1][0] * z[0] + root[1][1] * z[1]);
                    case "malt-offset" -> 0.05 + root[2][0] * z[0] + root[2][1] * z[1] + root[2][2] * z[2];
                    default -> input.value() + input.standardUncertainty() * random.nextGaussian();
                };
            }
            ph[i] = function.ph(values);
        }
        double mean = Arrays.stream(ph).average().orElseThrow();
        double deviation = Math.sqrt(
                Arrays.stream(ph).map(value -> (value - mean) * (value - mean)).sum() / (draws - 1));
        assertThat(mean).isCloseTo(prediction.ph(), within(0.01));
        assertThat(deviation).isCloseTo(prediction.standardUncertainty(), within(0.03 * deviation));
        assertThat(prediction.influences().stream()
                        .mapToDouble(MashPrediction.Influence::varianceShare)
                        .sum())
                .isCloseTo(1, within(1e-9));
    }

    @Test
    void theSlopesOfThePhAreThoseOfThePrediction() {
        PhFunction function = PhFunction.of(Mashes.porter());
        PhFunction.Slopes slopes = function.at(function.centre());
        MashPrediction prediction = MashPrediction.of(Mashes.porter());
        assertThat(slopes.ph()).isEqualTo(prediction.ph());
        for (MashPrediction.Influence influence : prediction.influences()) {
            assertThat(slopes.perUnit()[function.inputs().indexOf(influence.input())])
                    .isEqualTo(influence.phPerUnit());
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "not symmetric|0.01,0.001|0.002,0.01|positive definite",
                "not positive definite|0.01,0.02|0.02,0.01|positive definite",
                "a variance of 0|0,0|0,0.01|variance of parameter 0",
                "a variance above 1|0.01,0|0,1.01|variance of parameter 1",
                "a row too short|0.01|0,0.01|2 rows of 2 values",
                "a variance that is no number|NaN,0|0,0.01|variance of parameter 0"
            })
    void aBrokenCovarianceIsRefused(String name, String first, String second, String message) {
        List<List<Double>> rows = List.of(row(first), row(second));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Experience(1, List.of(BIAS, PALE), rows))
                .withMessageContaining(message);
    }

    private static List<Double> row(String text) {
        return Arrays.stream(text.split(",")).map(Double::valueOf).toList();
    }

    @Test
    void nonsenseIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Experience(-1, List.of(), List.of()))
                .withMessageContaining("-1");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> new Experience(1, List.of(PALE, PALE), List.of(List.of(0.01, 0.0), List.of(0.0, 0.01))))
                .withMessageContaining("stands twice");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LearntParameter.of(LearntQuantity.MALT_OFFSET, "frost", 0))
                .withMessageContaining("frost");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LearntParameter.of(LearntQuantity.MODEL_BIAS, "pale", 0))
                .withMessageContaining("belongs to all malts");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LearntParameter.of(LearntQuantity.MODEL_BIAS, Double.NaN))
                .withMessageContaining("NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new LearntParameter(LearntQuantity.MALT_OFFSET, "pale", "river", 0))
                .withMessageContaining("belongs to no product but names 'river'");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LearntParameter.of(LearntQuantity.PRODUCT_OFFSET, 0))
                .withMessageContaining("needs its malt class");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new LearntParameter(LearntQuantity.PRODUCT_OFFSET, "pale", "<b>", 0))
                .withMessageContaining("must be letters and digits");
        assertThat(LearntParameter.of(LearntQuantity.MODEL_BIAS, -2).mean()).isEqualTo(-2);
        assertThat(new Experience(0, List.of(PALE), List.of(List.of(1.0))).estimate(0))
                .isEqualTo(new Estimate(0.05, 1));
    }

    @Test
    void anOffsetIsThatOfTheMaltsThatItsClassOrProductNames() {
        Malt pale = Malt.of("pale");
        LearntParameter river = new LearntParameter(LearntQuantity.PRODUCT_OFFSET, "pale", "river", 0);
        LearntParameter unnamed = LearntParameter.of(LearntQuantity.PRODUCT_OFFSET, "pale", 0);
        assertThat(PALE.isOffsetOf(pale)).isTrue();
        assertThat(PALE.isOffsetOf(pale.named("hill"))).isTrue();
        assertThat(PALE.isOffsetOf(Malt.of("munich"))).isFalse();
        assertThat(PALE.isOffsetOf(Mashes.measured("pale", 5.7, 38))).isFalse();
        assertThat(river.isOffsetOf(pale.named("river"))).isTrue();
        assertThat(river.isOffsetOf(pale.named("hill"))).isFalse();
        assertThat(river.isOffsetOf(pale)).isFalse();
        assertThat(unnamed.isOffsetOf(pale)).isTrue();
        assertThat(unnamed.isOffsetOf(pale.named("river"))).isFalse();
        assertThat(BIAS.isOffsetOf(pale)).isFalse();
        assertThat(LearntParameter.of(LearntQuantity.MODEL_BIAS, 2).at(-1).mean())
                .isEqualTo(-1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LearntParameter.of(LearntQuantity.MODEL_BIAS, 2.01))
                .withMessageContaining("from -2 to 2");
    }

    /** An experience is only worth something with the tables that it was learned against. */
    @Test
    void theVersionIsRaisedWithTheTables() throws IOException {
        CRC32 sum = new CRC32();
        for (String table : List.of("mash-model.csv", "malts.csv", "malt-classes.csv")) {
            try (var stream = ExperienceTest.class.getResourceAsStream("/reference/" + table)) {
                new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                        .lines()
                        .filter(line -> !line.startsWith("#"))
                        .forEach(line -> sum.update((line + "\n").getBytes(StandardCharsets.UTF_8)));
            }
        }
        assertThat(Experience.VERSION + " " + Long.toHexString(sum.getValue()))
                .as("a table of the model has changed: raise Experience.VERSION, then note the new sum here")
                .isEqualTo("2 64a2d9ca");
    }
}
