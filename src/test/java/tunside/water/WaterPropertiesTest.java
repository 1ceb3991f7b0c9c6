package tunside.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.chemistry.Solution;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

class WaterPropertiesTest {
    private static final Volume LITRE = new Volume(1);

    private static WaterReport random(SplittableRandom random) {
        return Waters.plausible(random).withPh(random.nextDouble(6.5, 8.3));
    }

    @Test
    void blendingIsLinearInIonsAlkalinityAndCarbon() {
        SplittableRandom random = new SplittableRandom(31);
        for (int i = 0; i < 100; i++) {
            List<WaterSource> sources = new ArrayList<>();
            double litres = 0;
            Solution sum = Solution.WATER;
            for (int j = 0; j < 3; j++) {
                double volume = random.nextDouble(0.5, 40);
                WaterSource source =
                        new WaterSource("", new Volume(volume), Optional.of(random(random)), j == 2 ? 0.04 : 1);
                sources.add(source);
                litres += volume;
                sum = sum.plus(source.water().solution().scaled(volume));
            }
            Water blend = PreparedLiquor.of(sources, List.of()).treated();
            for (Ion ion : Ion.values()) {
                assertThat(blend.solution().ion(ion)).isCloseTo(sum.ion(ion) / litres, within(1e-14));
            }
            assertThat(blend.solution().carbon()).isCloseTo(sum.carbon() / litres, within(1e-14));
            assertThat(blend.alkalinityMeqPerL()).isCloseTo(1000 * sum.fixedCharge() / litres, within(1e-11));
        }
    }

    @Test
    void splittingASourceIntoTwoHalvesChangesNothing() {
        SplittableRandom random = new SplittableRandom(32);
        for (int i = 0; i < 50; i++) {
            WaterReport report = random(random);
            double litres = random.nextDouble(1, 50);
            List<Treatment> treatments =
                    List.of(new SaltTreatment(Salts.get("gypsum"), new Mass(0.004)), Boiling.usual());
            Water whole = PreparedLiquor.of(List.of(WaterSource.of(new Volume(litres), report)), treatments)
                    .treated();
            WaterSource half = WaterSource.of(new Volume(litres / 2), report);
            Water halves = PreparedLiquor.of(List.of(half, half), treatments).treated();
            assertThat(halves.ph()).isCloseTo(whole.ph(), within(1e-6));
            assertThat(halves.alkalinityMeqPerL()).isCloseTo(whole.alkalinityMeqPerL(), within(1e-7));
            assertThat(halves.solution().ion(Ion.CALCIUM))
                    .isCloseTo(whole.solution().ion(Ion.CALCIUM), within(1e-10));
        }
    }

    @Test
    void boilingNeverRaisesTheAlkalinityAndTakesHalfAsMuchCalcium() {
        SplittableRandom random = new SplittableRandom(33);
        for (int i = 0; i < 100; i++) {
            Water water = Water.of(random(random));
            Treatment boiling = switch (i % 3) {
                case 0 -> Boiling.usual();
                case 1 -> Boiling.of(OptionalDouble.of(random.nextDouble(0, 2)), OptionalDouble.empty(), false);
                default -> Boiling.of(OptionalDouble.empty(), OptionalDouble.of(random.nextDouble(0, 2)), true);
            };
            TreatmentStep step = boiling.applied(water, LITRE);
            double alkalinity = water.alkalinityMeqPerL() - step.water().alkalinityMeqPerL();
            double calcium = 1000
                    * (water.solution().ion(Ion.CALCIUM)
                            - step.water().solution().ion(Ion.CALCIUM));
            assertThat(alkalinity).isGreaterThanOrEqualTo(0);
            assertThat(calcium).isCloseTo(alkalinity / 2, within(1e-12));
            assertThat(1000 * step.calciumCarbonateMolPerKg()).isCloseTo(calcium, within(1e-12));
            assertThat(step.water().solution().carbon())
                    .isLessThanOrEqualTo(water.solution().carbon());
        }
    }

    @Test
    void moreSupersaturationLeavesMoreAlkalinity() {
        Water water = Waters.model(110, 5.4, 40);
        double last = 0;
        for (double index = 0; index <= 2; index += 0.1) {
            double left = Boiling.of(OptionalDouble.of(index), OptionalDouble.empty(), false)
                    .applied(water, LITRE)
                    .water()
                    .alkalinityMeqPerL();
            assertThat(left).isGreaterThan(last);
            last = left;
        }
    }

    @Test
    void boiledWaterStandsAtTheIndexAskedFor() {
        Water water = Waters.moderate();
        TreatmentStep step = Boiling.of(OptionalDouble.of(0.5), OptionalDouble.empty(), false)
                .applied(water, LITRE);
        // the carbon of the pairs is counted with the open water's, hence the tolerance
        assertThat(Saturation.calcite(step.water().solution(), new Temperature(100)))
                .isCloseTo(0.5, within(0.03));
    }

    /** Ca(OH)2 brings two equivalents and one calcium, each calcite takes as much: the difference stays. */
    @Test
    void limingMovesAlkalinityByTwiceTheCalcium() {
        SplittableRandom random = new SplittableRandom(34);
        for (int i = 0; i < 100; i++) {
            Water water = Water.of(random(random));
            double grams = random.nextDouble(0, 0.25);
            TreatmentStep step = new Liming(
                            Optional.of(new Mass(grams / 1000)), OptionalDouble.of(0.3), OptionalDouble.empty())
                    .applied(water, LITRE);
            double alkalinity = step.water().alkalinityMeqPerL() - water.alkalinityMeqPerL();
            double calcium = 1000
                    * (step.water().solution().ion(Ion.CALCIUM)
                            - water.solution().ion(Ion.CALCIUM));
            double lime = 1000 * grams / Liming.lime().molarMassGPerMol();
            assertThat(alkalinity).isCloseTo(2 * calcium, within(1e-10));
            assertThat(calcium).isCloseTo(lime - 1000 * step.calciumCarbonateMolPerKg(), within(1e-10));
            assertThat(step.grams()).isCloseTo(grams, within(1e-12));
        }
    }

    @Test
    void theFormulasDoseLeavesAboutTheLeastAlkalinity() {
        Water water = Waters.moderate();
        double formula = Liming.doseMolPerKg(water);
        double least = Double.POSITIVE_INFINITY;
        double at = 0;
        for (int percent = 80; percent <= 120; percent++) {
            double share = percent / 100.0;
            Mass mass = new Mass(share * formula * Liming.lime().molarMassGPerMol() / 1000);
            double left = new Liming(Optional.of(mass), OptionalDouble.of(0.3), OptionalDouble.empty())
                    .applied(water, LITRE)
                    .water()
                    .alkalinityMeqPerL();
            if (left < least) {
                least = left;
                at = share;
            }
        }
        assertThat(at).isBetween(0.95, 1.0);
    }

    @Test
    void moreAcidNeverRaisesThePh() {
        SplittableRandom random = new SplittableRandom(35);
        AcidProduct lactic = AcidProduct.of(Acids.get("lactic"), Strength.percent(80));
        for (int i = 0; i < 20; i++) {
            Water water = Water.of(random(random));
            double last = water.ph();
            double lastOpen = 14;
            for (double grams = 0.05; grams < 2; grams += 0.1) {
                Water acid = new AcidTreatment(lactic, new Mass(grams / 1000))
                        .applied(water, LITRE)
                        .water();
                assertThat(acid.ph()).isLessThan(last);
                double open = WaterProfile.of(acid, Waters.ROOM).openPh();
                assertThat(open).isLessThan(lastOpen);
                last = acid.ph();
                lastOpen = open;
            }
        }
    }

    @Test
    void scalingAllVolumesAndMassesChangesNothing() {
        SplittableRandom random = new SplittableRandom(36);
        WaterReport report = random(random);
        Water small = PreparedLiquor.of(
                        List.of(WaterSource.of(new Volume(3), report)),
                        List.of(new SaltTreatment(Salts.get("calcium-chloride"), new Mass(0.001))))
                .treated();
        Water large = PreparedLiquor.of(
                        List.of(WaterSource.of(new Volume(300), report)),
                        List.of(new SaltTreatment(Salts.get("calcium-chloride"), new Mass(0.1))))
                .treated();
        assertThat(large.ph()).isCloseTo(small.ph(), within(1e-9));
        assertThat(large.solution().ion(Ion.CALCIUM)).isCloseTo(small.solution().ion(Ion.CALCIUM), within(1e-14));
    }
}
