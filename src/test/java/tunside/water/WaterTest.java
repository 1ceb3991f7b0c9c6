package tunside.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Ion;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Alkalinity;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

class WaterTest {
    private static final Temperature ROOM = new Temperature(20);

    private static WaterReport report(double calcium, double sodium, double chloride, double alkalinity, double ph) {
        Map<Ion, Double> ions = new LinkedHashMap<>();
        ions.put(Ion.CALCIUM, calcium);
        ions.put(Ion.MAGNESIUM, 0.0);
        ions.put(Ion.SODIUM, sodium);
        ions.put(Ion.CHLORIDE, chloride);
        ions.put(Ion.SULFATE, 0.0);
        return new WaterReport(
                ions, Optional.of(new Alkalinity(alkalinity)), OptionalDouble.of(4.5), OptionalDouble.of(ph), ROOM);
    }

    private static Finding finding(Water water, String code) {
        return water.findings().stream()
                .filter(finding -> finding.code().startsWith(code))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theTitrationAndThePhOfTheReportComeOut() {
        SplittableRandom random = new SplittableRandom(21);
        for (int i = 0; i < 100; i++) {
            double alkalinity = random.nextDouble(0.3, 8);
            double ph = random.nextDouble(6.5, 8.5);
            Water water = Water.of(report(random.nextDouble(0, 3), random.nextDouble(0, 3), 1, alkalinity, ph));
            assertThat(water.ph()).isCloseTo(ph, within(1e-7));
            assertThat(1000 * ChargeBalance.at(water.solution(), ROOM, 4.5).netCharge())
                    .isCloseTo(alkalinity, within(1e-6));
        }
    }

    /** How much a titration overstates the alkalinity of a soft and a harder water, computed for this project. */
    @ParameterizedTest(name = "{0} mEq/L to pH {1}: true is {2} % less")
    @CsvSource({"0.428, 4.5, 7, 1.5", "0.448, 4.3, 12, 1.5", "2.335, 4.3, 1.5, 0.8"})
    void titratedAlkalinityOverstatesTheTrueOneInSoftWater(
            double titrated, double endPoint, double percent, double tolerance) {
        WaterReport soft = new WaterReport(
                Map.of(Ion.CALCIUM, titrated / 2),
                Optional.of(new Alkalinity(titrated)),
                OptionalDouble.of(endPoint),
                OptionalDouble.of(7.5),
                ROOM);
        double truth = Water.of(soft).alkalinityMeqPerL();
        assertThat(100 * (titrated / truth - 1)).isCloseTo(percent, within(tolerance));
    }

    @Test
    void carbonOfABicarbonateWaterIsTheAlkalinityAndAShareMore() {
        Water water = Water.of(report(0, 3, 0, 3, 7.5));
        assertThat(1000 * water.solution().carbon()).isCloseTo(3 * 1.065, within(0.03));
    }

    @Test
    void whatTheReportLacksIsAssumedAndSaid() {
        Water water = Water.of(new WaterReport(
                Map.of(Ion.CALCIUM, 1.0, Ion.CHLORIDE, 0.5),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                ROOM));
        assertThat(water.ph()).isCloseTo(7.5, within(1e-7));
        assertThat(water.alkalinityMeqPerL()).isCloseTo(1.5, within(1e-9));
        assertThat(finding(water, "water.ph").outcome()).isEqualTo(Outcome.NOTE);
        assertThat(finding(water, "water.alkalinity").outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(finding(water, "water.ion-balance").outcome()).isEqualTo(Outcome.NOTE);
    }

    @Test
    void ionBalanceIsHeldAgainstADifferenceInSoftWaterAndAgainstPercentInOthers() {
        assertThat(finding(Water.of(report(0.5, 1, 1, 1.19, 7.5)), "water.ion-balance"))
                .extracting(Finding::code, Finding::outcome)
                .containsExactly("water.ion-balance-soft", Outcome.PASS);
        assertThat(finding(Water.of(report(0.5, 1, 1, 1.25, 7.5)), "water.ion-balance")
                        .outcome())
                .isEqualTo(Outcome.CAUTION);
        assertThat(finding(Water.of(report(2, 1, 1, 4.1, 7.5)), "water.ion-balance"))
                .extracting(Finding::code, Finding::outcome)
                .containsExactly("water.ion-balance", Outcome.PASS);
        assertThat(finding(Water.of(report(2, 1, 1, 4.3, 7.5)), "water.ion-balance")
                        .outcome())
                .isEqualTo(Outcome.NOTE);
        assertThat(finding(Water.of(report(2, 1, 1, 5, 7.5)), "water.ion-balance")
                        .outcome())
                .isEqualTo(Outcome.CAUTION);
        assertThat(new IonBalance(6, 5).percent()).isCloseTo(100.0 / 11, within(1e-12));
        assertThat(new IonBalance(0, 0).percent()).isZero();
    }

    @Test
    void aPhThatTheAlkalinityCannotHaveIsACaution() {
        Water water = Water.of(report(0, 0.1, 0.1, 0.05, 10.9));
        assertThat(water.ph()).isLessThan(10.8);
        assertThat(finding(water, "water.ph-against-alkalinity").outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(Water.of(report(1, 1, 1, 2, 7.8)).findings())
                .extracting(Finding::code)
                .doesNotContain("water.ph-against-alkalinity");
    }

    @Test
    void residualAlkalinityIsKolbachs() {
        Water water = Water.of(new WaterReport(
                Map.of(Ion.CALCIUM, 1.75, Ion.MAGNESIUM, 0.7),
                Optional.of(new Alkalinity(3)),
                OptionalDouble.of(4.5),
                OptionalDouble.of(7.5),
                ROOM));
        assertThat(water.residualAlkalinityMeqPerL())
                .isCloseTo(water.alkalinityMeqPerL() - 1.0 - 0.2, within(1e-9)); // KOLBACH-1953
    }

    @Test
    void halfAndHalfOfAWaterIsTheWater() {
        Water water = Water.of(report(1, 1, 1, 2, 7.8));
        Water blended = Water.blend(List.of(new WaterPart(new Volume(7), water), new WaterPart(new Volume(7), water)));
        assertThat(blended.ph()).isCloseTo(water.ph(), within(1e-8));
        assertThat(blended.alkalinityMeqPerL()).isCloseTo(water.alkalinityMeqPerL(), within(1e-12));
        assertThat(blended.findings()).hasSize(2 * water.findings().size());
    }

    @Test
    void dilutionWithDistilledWaterIsLinearInIonsAndAlkalinity() {
        Water water = Water.of(report(1, 1, 1, 2, 7.8));
        Water blended = Water.blend(
                List.of(new WaterPart(new Volume(5), water), new WaterPart(new Volume(15), Water.distilled())));
        assertThat(blended.alkalinityMeqPerL()).isCloseTo(water.alkalinityMeqPerL() / 4, within(1e-12));
        assertThat(blended.solution().ion(Ion.CALCIUM)).isCloseTo(0.00025, within(1e-12));
        assertThatThrownBy(() -> Water.blend(List.of(new WaterPart(new Volume(0), water))))
                .hasMessageContaining("more than 0 L");
    }

    @Test
    void aReportOutOfRangeIsRefused() {
        assertThatThrownBy(() -> report(-1, 0, 0, 1, 7)).hasMessageContaining("Ca (mmol/L) must be from 0.0 to 5000.0");
        assertThatThrownBy(() -> report(1, 0, 0, 1, 3.9))
                .hasMessageContaining("pH of the water must be from 4.0 to 11.0");
        assertThatThrownBy(() -> report(1, 0, 0, 1, Double.NaN)).hasMessageContaining("is NaN");
    }
}
