package tunside.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.quantity.Alkalinity;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Volume;

/** What a liquor may be instead: each uncertain input one standard uncertainty further, by hand from water-model.csv. */
class WaterVariationsTest {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private static WaterSource source(double litres, WaterReport report) {
        return WaterSource.of(new Volume(litres), report);
    }

    private static WaterReport listed(double bicarbonate) {
        return new WaterReport(
                Map.of(Ion.CALCIUM, bicarbonate / 2, Ion.MAGNESIUM, 0.0),
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new CarbonateIons(bicarbonate, 0)),
                NONE,
                NONE,
                Waters.ROOM,
                Optional.empty(),
                Optional.empty(),
                NONE);
    }

    @Test
    void aReportVariesInAlkalinityPhAndHardness() {
        WaterReport report = Waters.report(1, 0.5, 1, 1, 0.5, 2);
        List<Water> varied = source(10, report).variedWaters();
        Water water = Water.of(report);
        assertThat(varied).hasSize(3);
        // at the end point 1.5 % of the carbon is still bicarbonate, which no titration finds
        assertThat(varied.get(0).alkalinityMeqPerL() - water.alkalinityMeqPerL())
                .isCloseTo(1.015 * Math.hypot(0.1, 0.05), within(5e-4));
        assertThat(varied.get(1).ph() - water.ph()).isCloseTo(0.1, within(1e-6));
        assertThat(varied.get(2).solution().ion(Ion.CALCIUM)).isCloseTo(0.00105, within(1e-12));
        assertThat(varied.get(2).solution().ion(Ion.MAGNESIUM)).isCloseTo(0.000525, within(1e-12));
        assertThat(varied.get(2).solution().ion(Ion.SODIUM)).isCloseTo(0.001, within(1e-12));
    }

    @Test
    void whatIsNotStatedVariesMore() {
        WaterReport bare =
                new WaterReport(Map.of(Ion.CALCIUM, 1.0, Ion.CHLORIDE, 0.5), Optional.empty(), NONE, NONE, Waters.ROOM);
        List<Water> varied = source(10, bare).variedWaters();
        // 1.5 mEq/L that the ions leave over: 5 % and 0.2
        assertThat(varied.get(0).alkalinityMeqPerL()).isCloseTo(1.5 + Math.hypot(0.075, 0.2), within(0.01));
        assertThat(varied.get(1).ph()).isCloseTo(7.8, within(1e-6));
        List<Water> ofIons = source(10, listed(3)).variedWaters();
        assertThat(ofIons.get(0).alkalinityMeqPerL()).isCloseTo(3 + Math.hypot(0.15, 0.05), within(1e-3));
        assertThat(ofIons.get(1).ph()).isCloseTo(7.8, within(1e-6));
    }

    @Test
    void whatOsmosisLeavesVariesByItsShare() {
        WaterReport report = Waters.report(1, 0.5, 1, 1, 0.5, 2);
        WaterSource left = new WaterSource("", new Volume(10), Optional.of(report), 0.1);
        assertThat(left.variedWaters().get(0).alkalinityMeqPerL() - left.water().alkalinityMeqPerL())
                .isCloseTo(0.1015 * Math.hypot(0.1, 0.05), within(5e-5));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new WaterSource("", new Volume(10), Optional.of(report), 1.01))
                .withMessageContaining("share that reverse osmosis leaves");
    }

    /** Pure water beside air has pH 5.6 (the textbooks' value). */
    @Test
    void distilledWaterMayHaveTakenTheCarbonDioxideOfTheAir() {
        List<Water> varied = WaterSource.distilled(new Volume(5)).variedWaters();
        assertThat(varied).hasSize(1);
        assertThat(varied.get(0).ph()).isCloseTo(5.61, within(0.05));
    }

    @Test
    void everySourceItsVolumeAndEveryTreatmentVaryOneAtATime() {
        WaterSource tap = source(12, Waters.report(1, 0.5, 1, 1, 0.5, 2));
        WaterSource distilled = WaterSource.distilled(new Volume(8));
        List<Treatment> treatments = List.of(
                new SaltTreatment(Salts.get("gypsum"), new Mass(0.002)),
                new SaltTreatment(Salts.get("calcium-chloride"), new Mass(0.001)));
        PreparedLiquor liquor = PreparedLiquor.of(List.of(tap, distilled), treatments);
        assertThat(liquor.volume()).isEqualTo(new Volume(20));
        assertThat(liquor.waters()).hasSize(2);
        assertThat(liquor.steps()).hasSize(2);
        assertThat(liquor.treated()).isEqualTo(liquor.steps().get(1).water());
        List<PreparedLiquor> varied = liquor.varied();
        assertThat(varied).hasSize(3 + 1 + 1 + 1 + 2);
        assertThat(varied).extracting(PreparedLiquor::treated).doesNotContain(liquor.treated());
        assertThat(varied.get(3).volume().litres()).isCloseTo(20.24, within(1e-12));
        assertThat(varied.get(5).volume().litres()).isCloseTo(20.16, within(1e-12));
        // 0.03 less of 2 g in 20 L of 172.17 g/mol
        assertThat(varied.get(6).treated().solution().ion(Ion.SULFATE)
                        - liquor.treated().solution().ion(Ion.SULFATE))
                .isCloseTo(-0.03 * 0.1 / 172.17, within(1e-9));
        PreparedLiquor untreated = PreparedLiquor.of(List.of(tap), List.of());
        assertThat(untreated.treated())
                .isSameAs(untreated.blended())
                .isSameAs(untreated.waters().get(0));
    }

    @Test
    void anAcidVariesByItsAmountAndItsStrength() {
        AcidProduct lactic = AcidProduct.of(Acids.get("lactic"), Strength.percent(80));
        AcidTreatment less =
                (AcidTreatment) new AcidTreatment(lactic, new Mass(1)).varied().get(0);
        double ofStrength = lactic.actingUncertaintyMolPerKg() / lactic.actingMolPerKg();
        assertThat(less.mass().kilograms()).isCloseTo(1 - Math.hypot(0.03, ofStrength), within(1e-12));
        assertThat(ofStrength).isGreaterThan(0.01);
        assertThat(AcidTreatment.of(lactic, new Volume(0.5)).mass().kilograms())
                .isCloseTo(0.5 * lactic.densityGPerMl(), within(1e-12));
    }

    /** What is taken can be varied: at its largest amounts, and where no water takes more alkalinity. */
    @Test
    void aLiquorVariesAtItsLimitsToo() {
        WaterReport tap = Waters.report(1, 0.5, 1, 1, 0.5, 2);
        AcidProduct acid = AcidProduct.of(Acids.get("hydrochloric"), Strength.percent(10));
        List<Treatment> largest = List.of(
                new SaltTreatment(Salts.get("sodium-chloride"), new Mass(0.2499 * 0.05844)),
                new AcidTreatment(acid, new Mass(0.2499 / acid.actingMolPerKg())),
                new Liming(Optional.of(new Mass(0.0999 * 0.07409)), NONE, NONE));
        for (Treatment treatment : largest) {
            assertThat(PreparedLiquor.of(List.of(source(1, tap)), List.of(treatment))
                            .varied())
                    .hasSizeGreaterThanOrEqualTo(5);
        }
        WaterReport sour = new WaterReport(
                Map.of(Ion.CALCIUM, 1.0, Ion.CHLORIDE, 0.5),
                Optional.of(new Alkalinity(0)),
                OptionalDouble.of(4.5),
                OptionalDouble.of(4.4),
                Waters.ROOM);
        assertThat(source(1, sour).variedWaters().get(0).ph()).isCloseTo(4.4, within(1e-6));
        WaterReport unstated =
                new WaterReport(sour.mmolPerL(), Optional.empty(), NONE, OptionalDouble.of(4.4), Waters.ROOM);
        assertThat(source(1, unstated).variedWaters().get(0).alkalinityMeqPerL())
                .isCloseTo(1.5 + Math.hypot(0.075, 0.2), within(0.05));
        WaterReport gassy = new WaterReport(
                sour.mmolPerL(),
                Optional.of(new Alkalinity(1.82)),
                OptionalDouble.of(4.5),
                OptionalDouble.of(4.55),
                Waters.ROOM);
        Water water = Water.of(gassy);
        assertThat(water.solution().carbon()).isBetween(0.95, 1.0);
        assertThat(source(1, gassy).variedWaters().get(0).alkalinityMeqPerL())
                .isLessThan(0.97 * water.alkalinityMeqPerL());
    }

    @Test
    void aBoilMayLeaveMoreChalkAndMoreCarbonDioxide() {
        List<Treatment> usual = Boiling.usual().varied();
        double air = Boiling.usual().carbonDioxideAtm().getAsDouble();
        assertThat(usual)
                .containsExactly(
                        new Boiling(OptionalDouble.of(1), OptionalDouble.of(1.25), OptionalDouble.of(air)),
                        new Boiling(NONE, NONE, OptionalDouble.of(3 * air)));
        assertThat(Boiling.of(OptionalDouble.of(0.5), NONE, true).varied())
                .containsExactly(new Boiling(OptionalDouble.of(0.8), NONE, NONE));
        assertThat(Boiling.of(OptionalDouble.of(1.9), OptionalDouble.of(9), true)
                        .varied())
                .containsExactly(new Boiling(OptionalDouble.of(2), OptionalDouble.of(10), NONE));
        assertThat(new Boiling(NONE, NONE, OptionalDouble.of(0.5)).varied().get(1))
                .isEqualTo(new Boiling(NONE, NONE, OptionalDouble.of(1)));
    }

    @Test
    void limeMayLeaveMoreChalkAndBeLessThanWeighed() {
        assertThat(Liming.usual().varied())
                .containsExactly(new Liming(Optional.empty(), OptionalDouble.of(0.5), OptionalDouble.of(0.875)));
        List<Treatment> weighed = new Liming(Optional.of(new Mass(1)), OptionalDouble.of(1.9), NONE).varied();
        assertThat(weighed)
                .containsExactly(
                        new Liming(Optional.of(new Mass(1)), OptionalDouble.of(2), NONE),
                        new Liming(Optional.of(new Mass(0.97)), OptionalDouble.of(1.9), NONE));
        assertThat(new Liming(Optional.empty(), NONE, OptionalDouble.of(9)).varied())
                .containsExactly(new Liming(Optional.empty(), OptionalDouble.of(0.5), OptionalDouble.of(10)));
    }
}
