package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.ProtonBalance;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MashPrediction;
import tunside.quantity.Alkalinity;
import tunside.quantity.Mass;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;
import tunside.water.Water;
import tunside.water.WaterReport;

class MeasuredMashTest {
    private static final Volume VOLUME = new Volume(16);
    private static final Water WATER = Water.of(new WaterReport(
            Map.of(Ion.CALCIUM, 1.0),
            Optional.of(new Alkalinity(2)),
            OptionalDouble.of(4.5),
            OptionalDouble.of(7.6),
            new Temperature(20)));
    private static final Mash MASH =
            Mash.of(new Grist(List.of(new GristPart(Malt.of("pale"), new Mass(5)))), Liquor.of(VOLUME, WATER));

    private static Outcome outcome(double deviations, double u) {
        MashPrediction prediction = MashPrediction.of(MASH);
        double both = Math.hypot(prediction.standardUncertainty(), u);
        return MeasuredMash.against(MASH, prediction.ph() + deviations * both, u)
                .outcome();
    }

    @Test
    void aMeasuredPhIsJudgedByTheUncertaintyOfBoth() {
        for (double u : new double[] {0.01, 0.05, 0.2}) {
            assertThat(outcome(2.49, u)).isEqualTo(Outcome.PASS);
            assertThat(outcome(2.51, u)).isEqualTo(Outcome.CAUTION);
            assertThat(outcome(-2.51, u)).isEqualTo(Outcome.CAUTION);
            assertThat(outcome(3.99, u)).isEqualTo(Outcome.CAUTION);
            assertThat(outcome(4.01, u)).isEqualTo(Outcome.STOP);
            assertThat(outcome(-4.01, u)).isEqualTo(Outcome.STOP);
        }
        Finding finding = MeasuredMash.against(MASH, 5.7, 0.05);
        assertThat(finding.observed()).hasValue(5.7);
        assertThat(finding.expected()).hasValue(MashPrediction.of(MASH).ph());
    }

    @Test
    void theMostAcidGrowsWithMaltAlkalinityAndVolume() {
        double liquor = 16 * (2 * WATER.alkalinityMeqPerL() + 2);
        assertThat(MeasuredMash.mostMillimoles(Optional.empty(), VOLUME, WATER)).isCloseTo(liquor, within(1e-9));
        assertThat(MeasuredMash.mostMillimoles(Optional.of(MASH), VOLUME, WATER))
                .isCloseTo(liquor + 450, within(1e-9));
    }

    @Test
    void aMashAnswersAcidAsItsOwnBalanceDoes() {
        BufferedLiquid liquid =
                BufferedLiquid.mash(MASH, Acids.get("hydrochloric").system());
        ProtonBalance balance = MASH.balance();
        double start = balance.solve();
        double after = liquid.after(1, start, 0, 60);
        assertThat(balance.uptakeMeq(after)).isCloseTo(60, within(1e-6));
        assertThat(liquid.logSd()).isEqualTo(0.28);
        double stiffer = liquid.after(1.5, start, 0, 60);
        assertThat(1.5 * MASH.maltBalance().uptakeMeq(stiffer)
                        + MASH.otherBalance().uptakeMeq(stiffer)
                        - 1.5 * MASH.maltBalance().uptakeMeq(start)
                        - MASH.otherBalance().uptakeMeq(start))
                .isCloseTo(60, within(1e-6));
    }

    @Test
    void weakAcidThatIsInAlreadyBuffersTheNextAddition() {
        BufferedLiquid liquid = BufferedLiquid.mash(MASH, Acids.get("lactic").system());
        double start = MASH.balance().solve();
        double whole = liquid.after(1, start, 0, 300);
        double half = liquid.after(1, start, 0, 150);
        assertThat(liquid.after(1, half, 150, 150)).isCloseTo(whole, within(1e-7));
        assertThat(liquid.after(1, half, 0, 150)).isNotCloseTo(whole, within(1e-3));
    }

    @Test
    void moreAcidThanTheModelReachesEndsAtZero() {
        BufferedLiquid liquid =
                BufferedLiquid.mash(MASH, Acids.get("hydrochloric").system());
        assertThat(liquid.after(1, 5.7, 0, 1e6)).isZero();
    }
}
