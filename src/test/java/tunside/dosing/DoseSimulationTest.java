package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Acids;
import tunside.quantity.Volume;

/**
 * Two thousand virtual mashes, seeded: buffering drawn from the published spread, distilled-water pH from a class's
 * spread, every reading off by the meter's error of 0.02 to 0.05. Each is dosed by the plan until the plan says stop.
 */
class DoseSimulationTest {
    private static final int MASHES = 2000;
    private static final int MOST_ADDITIONS = 8;
    private static final DoseTarget TARGET = new DoseTarget(5.3, 5.4, 5.5, 0.05);

    private record Tally(int overshot, int needed, int inThree, int intervals, int covered) {}

    private static Tally tally = new Tally(0, 0, 0, 0, 0);

    @BeforeAll
    static void doseThemAll() {
        SplittableRandom random = new SplittableRandom(20261125);
        int overshot = 0;
        int needed = 0;
        int inThree = 0;
        int intervals = 0;
        int covered = 0;
        for (int i = 0; i < MASHES; i++) {
            double scale = Math.exp(BufferedLiquid.MASH_LOG_SD * random.nextGaussian());
            double truth = 5.75 + 0.1 * random.nextGaussian();
            double meter = random.nextDouble(0.02, 0.05);
            Titratable mash = BufferedLiquid.even(
                    new Volume(20),
                    38 * 5 / 20.0,
                    BufferedLiquid.MASH_LOG_SD,
                    Acids.get("lactic").system());
            Belief belief = Belief.first(mash, reading(truth, meter, random), 0.03);
            double added = 0;
            int additions = 0;
            while (additions < MOST_ADDITIONS
                    && DosePlan.of(belief, TARGET, 0.5, 2000, meter) instanceof DoseOutcome.Dose dose
                    && !dose.stages().isEmpty()) {
                DoseStage stage = dose.stages().get(0);
                double poured = stage.millimoles() * (1 + 0.03 * random.nextGaussian());
                truth = mash.after(scale, truth, added, poured);
                added += poured;
                additions++;
                intervals++;
                covered += truth >= stage.lowPh() && truth <= stage.highPh() ? 1 : 0;
                belief = belief.after(new DoseEvent.Added(stage.millimoles())).after(reading(truth, meter, random));
            }
            if (additions > 0) {
                needed++;
                overshot += truth < TARGET.lowPh() ? 1 : 0;
                inThree += additions <= 3 ? 1 : 0;
            }
        }
        tally = new Tally(overshot, needed, inThree, intervals, covered);
        System.out.printf(
                Locale.ROOT,
                "simulation: %d dosed, overshoot %.2f %%, within three additions %.1f %%, coverage %.1f %% of %d intervals%n",
                needed,
                100.0 * overshot / needed,
                100.0 * inThree / needed,
                100.0 * covered / intervals,
                intervals);
    }

    private static DoseEvent.Reading reading(double truth, double meter, SplittableRandom random) {
        return new DoseEvent.Reading(truth + meter * random.nextGaussian(), meter);
    }

    @Test
    void noMoreMashesOvershootThanTheAcceptedRisk() {
        assertThat(tally.overshot / (double) tally.needed).isLessThanOrEqualTo(TARGET.acceptedRisk());
    }

    @Test
    void thePlanStopsWithinThreeAdditionsInNinetyFivePercent() {
        assertThat(tally.inThree / (double) tally.needed).isGreaterThanOrEqualTo(0.95);
    }

    @Test
    void ninetyPercentIntervalsCoverNinetyPercent() {
        assertThat(tally.covered / (double) tally.intervals).isBetween(0.87, 0.93);
    }

    @Test
    void mostMashesNeedAcid() {
        assertThat(tally.needed).isGreaterThan(MASHES * 9 / 10);
    }
}
