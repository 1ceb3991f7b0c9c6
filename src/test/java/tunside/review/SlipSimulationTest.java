package tunside.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tunside.dosing.PhReading;
import tunside.mash.AcidAddition;
import tunside.mash.Addition;
import tunside.mash.Estimate;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Mash;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/** 200 virtual brewers a slip: six sound brews with doses, and one with the slip planted in what is written down. */
class SlipSimulationTest {
    private static final int BREWERS = 200;
    private static final int SOUND = 6;

    /** How often each was found, of 200: the brew set aside, the slip named, named first. What was written is the plant. */
    enum Planted {
        BASE_MALT_TEN_TIMES("malt-mass", 0.1, 90, 65, 5, brew -> masses(brew, 0, 10)),
        BASE_MALT_A_THIRD("malt-mass", 3, 90, 88, 33, brew -> masses(brew, 0, 1 / 3.0)),
        POUNDS_FOR_KILOGRAMS("grist-mass", 0.4536, 20, 9, 0, brew -> masses(brew, -1, 1 / 0.4536)),
        GALLONS_FOR_LITRES("liquor-volume", 3.785, 60, 3, 0, brew -> litres(brew, 1 / 3.785)),
        METER("meter", -0.35, 195, 195, 190, brew -> readings(brew, true, true, 0.35)),
        FIRST_READING_MISTYPED("first-reading", -0.9, 198, 198, 195, brew -> readings(brew, true, false, 0.9)),
        READING_AFTER_A_DOSE_MISTYPED(
                "reading-after-dose", 0.9, 195, 195, 150, brew -> readings(brew, false, true, -0.9)),
        DOSE_TEN_TIMES("acid-strength", 10, 65, 30, 0, brew -> doses(brew, 0.1)),
        DOSE_A_TENTH("acid-strength", 0.1, 195, 190, 175, brew -> doses(brew, 10)),
        OTHER_WATER("water", 3, 25, 24, 0, brew -> alkalinity(brew, -3));

        private final String slip;
        private final double needed;
        private final int setAside;
        private final int named;
        private final int first;
        private final UnaryOperator<MeasuredBrew> plant;

        Planted(String slip, double needed, int setAside, int named, int first, UnaryOperator<MeasuredBrew> plant) {
            this.slip = slip;
            this.needed = needed;
            this.setAside = setAside;
            this.named = named;
            this.first = first;
            this.plant = plant;
        }

        boolean shifts() {
            return slip.equals("water") || slip.equals("meter") || slip.contains("reading");
        }
    }

    private static MeasuredBrew with(MeasuredBrew brew, Grist grist, Liquor liquor) {
        Mash mash = brew.mash();
        return new MeasuredBrew(
                brew.label(),
                new Mash(grist, liquor, mash.additions(), mash.conditions(), mash.model()),
                brew.first(),
                brew.doses());
    }

    private static MeasuredBrew masses(MeasuredBrew brew, int which, double factor) {
        List<GristPart> parts = new ArrayList<>();
        for (GristPart part : brew.mash().grist().parts()) {
            parts.add(
                    which < 0 || which == parts.size()
                            ? new GristPart(
                                    part.malt(), new Mass(factor * part.mass().kilograms()))
                            : part);
        }
        return with(brew, new Grist(parts), brew.mash().liquor());
    }

    private static MeasuredBrew litres(MeasuredBrew brew, double factor) {
        Liquor liquor = brew.mash().liquor();
        return with(
                brew,
                brew.mash().grist(),
                Liquor.titrated(
                        new Volume(factor * liquor.volume().litres()),
                        liquor.alkalinityMeqPerL(),
                        4.4,
                        7.6,
                        liquor.calciumMeqPerL(),
                        liquor.magnesiumMeqPerL()));
    }

    private static MeasuredBrew alkalinity(MeasuredBrew brew, double more) {
        Liquor liquor = brew.mash().liquor();
        return with(
                brew,
                brew.mash().grist(),
                Liquor.titrated(
                        liquor.volume(),
                        Math.max(0, liquor.alkalinityMeqPerL() + more),
                        4.4,
                        7.6,
                        liquor.calciumMeqPerL(),
                        liquor.magnesiumMeqPerL()));
    }

    private static MeasuredBrew readings(MeasuredBrew brew, boolean first, boolean dosed, double more) {
        return new MeasuredBrew(
                brew.label(),
                brew.mash(),
                new PhReading(
                        brew.first().ph() + (first ? more : 0), brew.first().standardUncertainty()),
                brew.doses().stream()
                        .map(dose -> new MeasuredBrew.Dose(
                                dose.addition(),
                                new PhReading(
                                        dose.after().ph() + (dosed ? more : 0),
                                        dose.after().standardUncertainty())))
                        .toList());
    }

    private static MeasuredBrew doses(MeasuredBrew brew, double factor) {
        return new MeasuredBrew(
                brew.label(),
                brew.mash(),
                brew.first(),
                brew.doses().stream()
                        .map(dose -> new MeasuredBrew.Dose(times(dose.addition(), factor), dose.after()))
                        .toList());
    }

    private static Addition times(Addition addition, double factor) {
        AcidAddition acid = (AcidAddition) addition;
        return new AcidAddition(
                acid.acid(), Estimate.exactly(factor * acid.millimoles().value()));
    }

    @ParameterizedTest
    @EnumSource(Planted.class)
    void aPlantedSlipIsFoundAndNamed(Planted planted) {
        int setAside = 0;
        int named = 0;
        int first = 0;
        int soundSetAside = 0;
        List<Double> needed = new ArrayList<>();
        for (int seed = 0; seed < BREWERS; seed++) {
            VirtualHousehold household = new VirtualHousehold(5000 + seed, false);
            List<MeasuredBrew> record = new ArrayList<>();
            for (int i = 0; i < SOUND; i++) {
                record.add(household.brew("brew " + i, "river", i % 2 == 0).brew());
            }
            record.add(planted.plant.apply(household.brew("slip", "river", true).brew()));
            List<ReviewedBrew> brews = BrewReview.of(record).brews();
            soundSetAside += (int) brews.subList(0, SOUND).stream()
                    .filter(brew -> !brew.counted())
                    .count();
            ReviewedBrew brew = brews.get(SOUND);
            if (!brew.counted() && !brew.slips().isEmpty()) {
                setAside++;
                first += brew.slips().get(0).slip().id().equals(planted.slip) ? 1 : 0;
                Optional<SuspectedSlip> suspect = brew.slips().stream()
                        .limit(4)
                        .filter(slip ->
                                slip.weight() >= 0.03 && slip.slip().id().equals(planted.slip))
                        .findFirst();
                named += suspect.isPresent() ? 1 : 0;
                suspect.ifPresent(slip ->
                        needed.add(planted.shifts() ? slip.needed() - slip.stated() : slip.needed() / slip.stated()));
            }
        }
        needed.sort(null);
        double median = needed.get(needed.size() / 2);
        System.out.printf(
                "%s: of %d set aside %d, named %d, first %d; needed %.2f for %.2f; sound brews set aside %d of %d%n",
                planted, BREWERS, setAside, named, first, median, planted.needed, soundSetAside, BREWERS * SOUND);
        assertThat(setAside).isGreaterThanOrEqualTo(planted.setAside);
        assertThat(named).isGreaterThanOrEqualTo(planted.named);
        assertThat(first).isGreaterThanOrEqualTo(planted.first);
        assertThat(soundSetAside).isLessThan(BREWERS * SOUND / 100);
        if (planted.shifts()) {
            assertThat(median).isCloseTo(planted.needed, within(0.3 * Math.abs(planted.needed)));
        } else {
            assertThat(median / planted.needed).isBetween(0.4, 2.5);
        }
    }
}
