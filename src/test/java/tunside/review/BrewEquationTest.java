package tunside.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tunside.review.Records.READING;
import static tunside.review.Records.lactic;
import static tunside.review.Records.part;
import static tunside.review.Records.tap;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Acids;
import tunside.chemistry.Salts;
import tunside.dosing.PhReading;
import tunside.mash.Experience;
import tunside.mash.LearntQuantity;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MashModel;
import tunside.mash.SaltAddition;
import tunside.mash.UncertainInput;
import tunside.quantity.Mass;

/** A brew with an acid and a salt in it from the start, and an acid, a salt and another acid as doses. */
class BrewEquationTest {
    private static final Mash MASH = tap(
                    part(Malt.of("pale"), 4), part(Malt.of("munich").named("hill"), 1))
            .plus(lactic(8))
            .plus(salt("gypsum", 0.003));
    private static final MeasuredBrew BREW = new MeasuredBrew(
            "brew",
            MASH,
            new PhReading(5.5, READING),
            List.of(
                    new MeasuredBrew.Dose(lactic(15), new PhReading(5.4, 0.02)),
                    new MeasuredBrew.Dose(salt("calcium-chloride", 0.004), new PhReading(5.35, 0.04)),
                    new MeasuredBrew.Dose(
                            new tunside.mash.AcidAddition(
                                    Acids.get("phosphoric"), tunside.mash.Estimate.relative(10, 0.05)),
                            new PhReading(5.3, 0.01))));
    private static final Experience PRIOR = Experience.prior(MashModel.standard(), BREW.maltsByClass());
    private static final BrewEquation EQUATION = new BrewEquation(BREW, PRIOR);
    private static final RealVector MEANS = HouseholdFit.means(PRIOR);

    private static SaltAddition salt(String id, double kilograms) {
        return new SaltAddition(Salts.get(id), new Mass(kilograms));
    }

    private static double[] expected(RealVector parameters, double[] own) {
        return EQUATION.expected(EQUATION.values(parameters, own));
    }

    @Test
    void eachReadingIsThatOfTheMashWithTheDosesBeforeIt() {
        double[] expected = expected(MEANS, EQUATION.ownCentre());
        Mash now = MASH;
        assertThat(EQUATION.readings()).isEqualTo(4);
        assertThat(expected[0]).isCloseTo(now.ph(), within(1e-9));
        for (int r = 1; r < 4; r++) {
            now = now.plus(BREW.doses().get(r - 1).addition());
            assertThat(expected[r]).isCloseTo(now.ph(), within(1e-9));
            assertThat(EQUATION.measured(r))
                    .isEqualTo(BREW.doses().get(r - 1).after().ph());
        }
        assertThat(EQUATION.measured(0)).isEqualTo(5.5);
        assertThat(EQUATION.readingVariance(0)).isCloseTo(0.0009, within(1e-15));
        assertThat(EQUATION.readingVariance(2)).isCloseTo(0.0016, within(1e-15));
        assertThat(EQUATION.brew()).isSameAs(BREW);
    }

    /** Biases shift what is known by class, as the mash's own balance says; the buffering is a logarithm. */
    @Test
    void sharedParametersActAsInAPrediction() {
        RealVector moved = MEANS.copy();
        moved.setEntry(PRIOR.indexOf(LearntQuantity.BUFFERING_SCALE), Math.log(1.3));
        Mash scaled = MASH.withModel(MashModel.standard()
                .withBufferingScale(new tunside.mash.Estimate(
                        1.3, MashModel.standard().bufferingScale().standardUncertainty())));
        assertThat(expected(moved, EQUATION.ownCentre())[0]).isCloseTo(scaled.ph(), within(1e-9));
    }

    @Test
    void theTangentTouches() {
        double[] own = EQUATION.ownCentre();
        BrewEquation.Tangent tangent = EQUATION.tangent(MEANS, own);
        assertThat(tangent.expected()).containsExactly(expected(MEANS, own), within(1e-9));
        for (int k = 0; k < MEANS.getDimension(); k++) {
            RealVector more = MEANS.copy();
            RealVector less = MEANS.copy();
            more.addToEntry(k, 1e-3);
            less.addToEntry(k, -1e-3);
            double[] above = expected(more, own);
            double[] below = expected(less, own);
            for (int r = 0; r < 4; r++) {
                assertThat(tangent.toShared()[r][k])
                        .as("reading %d to parameter %d", r, k)
                        .isCloseTo((above[r] - below[r]) / 2e-3, within(2e-4));
            }
        }
        List<Double> uncertainties = ownUncertainties();
        assertThat(uncertainties).hasSize(own.length);
        for (int i = 0; i < own.length; i++) {
            double step = 0.02 * uncertainties.get(i);
            double[] more = own.clone();
            double[] less = own.clone();
            more[i] += step;
            less[i] -= step;
            double[] above = expected(MEANS, more);
            double[] below = expected(MEANS, less);
            for (int r = 0; r < 4; r++) {
                double change = tangent.toOwn()[r][i] * 2 * step;
                assertThat(change)
                        .as("reading %d to own input %d", r, i)
                        .isCloseTo(above[r] - below[r], within(1e-6 + 2e-3 * Math.abs(change)));
            }
        }
    }

    /** Of the inputs that are unsure and that no other brew shares. */
    private static List<Double> ownUncertainties() {
        List<String> shared =
                List.of("model-bias", "malt-types-bias", "buffering-scale", "malt-offset", "product-offset");
        List<Double> uncertainties = new ArrayList<>();
        for (UncertainInput input : EQUATION.inputs()) {
            if (!shared.contains(input.id()) && input.standardUncertainty() > 0) {
                uncertainties.add(input.standardUncertainty());
            }
        }
        return uncertainties;
    }

    @Test
    void theOwnCovarianceIsThatOfTheOwnInputsAndTheNoiseAddsTheReadings() {
        BrewEquation.Tangent tangent = EQUATION.tangent(MEANS, EQUATION.ownCentre());
        RealMatrix own = EQUATION.ownCovariance(tangent);
        RealMatrix noise = EQUATION.noise(tangent);
        List<Double> uncertainties = ownUncertainties();
        for (int r = 0; r < 4; r++) {
            for (int s = 0; s < 4; s++) {
                double sum = 0;
                for (int i = 0; i < uncertainties.size(); i++) {
                    sum += Math.pow(uncertainties.get(i), 2) * tangent.toOwn()[r][i] * tangent.toOwn()[s][i];
                }
                assertThat(own.getEntry(r, s)).isCloseTo(sum, within(1e-15));
                assertThat(noise.getEntry(r, s))
                        .isCloseTo(sum + (r == s ? EQUATION.readingVariance(r) : 0), within(1e-15));
            }
        }
    }

    /** The observation's residual at the point itself is what is read less what is expected there, whatever the point. */
    @Test
    void theLinearProblemTouchesTheBalanceAtAnyPoint() {
        double[] own = EQUATION.ownCentre();
        RealVector shift = new ArrayRealVector(MEANS.getDimension(), 0.02);
        BrewEquation.Tangent atCentre = EQUATION.tangent(MEANS.add(shift), own);
        RealVector residual = EQUATION.observation(atCentre, shift, own).residual(shift);
        for (int r = 0; r < 4; r++) {
            assertThat(residual.getEntry(r)).isCloseTo(EQUATION.measured(r) - atCentre.expected()[r], within(1e-12));
        }
        // with its own inputs moved it is what the central ones would leave, to first order
        double[] moved = own.clone();
        List<Double> uncertainties = ownUncertainties();
        for (int i = 0; i < moved.length; i++) {
            moved[i] += 0.02 * uncertainties.get(i);
        }
        RealVector back = EQUATION.observation(EQUATION.tangent(MEANS.add(shift), moved), shift, moved)
                .residual(shift);
        for (int r = 0; r < 4; r++) {
            assertThat(back.getEntry(r)).isCloseTo(residual.getEntry(r), within(2e-5));
        }
    }

    /** A pull on one reading moves an input by its variance times its slope. */
    @Test
    void theOwnInputsFollowThePull() {
        double[] own = EQUATION.ownCentre();
        BrewEquation.Tangent tangent = EQUATION.tangent(MEANS, own);
        double[] moved = EQUATION.ownValues(tangent, new ArrayRealVector(new double[] {1, 0, 0, -2}));
        List<Double> uncertainties = ownUncertainties();
        for (int i = 0; i < own.length; i++) {
            double by = Math.pow(uncertainties.get(i), 2) * (tangent.toOwn()[0][i] - 2 * tangent.toOwn()[3][i]);
            assertThat(moved[i] - own[i]).isCloseTo(by, within(1e-12));
        }
    }
}
