package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import tunside.quantity.Temperature;

class ChargeCurveTest {
    @Test
    void theMeanChargeIsTheSumOfTheFormsCharges() {
        for (Acid acid : Acids.all().values()) {
            for (double celsius : new double[] {5, 25, 60}) {
                Temperature temperature = new Temperature(celsius);
                ChargeCurve curve = acid.system().at(temperature);
                for (double ph = -1; ph <= 15; ph += 0.25) {
                    double[] shares = acid.system().shares(ph, temperature);
                    double charge = 0;
                    for (int j = 0; j < shares.length; j++) {
                        charge += (acid.system().topCharge() - j) * shares[j];
                    }
                    assertThat(curve.meanCharge(ph))
                            .as("%s at %s", acid.id(), ph)
                            .isCloseTo(charge, within(1e-12));
                }
            }
        }
    }

    @Test
    void anAcidWithoutStepsKeepsItsCharge() {
        assertThat(new ChargeCurve(-1, new double[0]).meanCharge(7)).isEqualTo(-1);
    }

    @Test
    void atItsPkAnAcidHasLostHalfAProton() {
        assertThat(new ChargeCurve(0, new double[] {4.2}).meanCharge(4.2)).isCloseTo(-0.5, within(1e-15));
    }
}
