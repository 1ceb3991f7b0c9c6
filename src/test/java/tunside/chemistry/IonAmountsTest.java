package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

class IonAmountsTest {
    private static Map<Ion, Double> backwards() {
        Map<Ion, Double> amounts = new LinkedHashMap<>();
        amounts.put(Ion.NITRATE, 1.0);
        amounts.put(Ion.SODIUM, 2.0);
        amounts.put(Ion.CALCIUM, 3.0);
        return amounts;
    }

    @Test
    void amountsAreInTheOrderOfTheIonsAndApartFromWhatTheyWereTakenFrom() {
        Map<Ion, Double> source = backwards();
        IonAmounts amounts = IonAmounts.of(source);
        assertThat(amounts.keySet()).containsExactly(Ion.CALCIUM, Ion.SODIUM, Ion.NITRATE);
        assertThat(amounts.values()).containsExactly(3.0, 2.0, 1.0);
        assertThat(amounts).isEqualTo(source).hasSameHashCodeAs(source).hasSize(3);
        source.put(Ion.CHLORIDE, 4.0);
        assertThat(amounts).doesNotContainKey(Ion.CHLORIDE);
        assertThat(amounts.get(Ion.CHLORIDE)).isNull();
        assertThat(IonAmounts.amount(amounts, Ion.CHLORIDE)).isZero();
        assertThat(IonAmounts.amount(amounts, Ion.SODIUM)).isEqualTo(2);
    }

    @Test
    void amountsCannotBeChanged() {
        IonAmounts amounts = IonAmounts.of(backwards());
        assertThatThrownBy(() -> amounts.put(Ion.CALCIUM, 5.0)).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> amounts.remove(Ion.CALCIUM)).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> amounts.entrySet().iterator().next().setValue(5.0))
                .isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(amounts::clear).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void everyAmountIsChangedAndNoneIsAdded() {
        Map<Ion, Double> changed = IonAmounts.changed(backwards(), (ion, amount) -> amount * ion.charge());
        assertThat(changed.keySet()).containsExactly(Ion.CALCIUM, Ion.SODIUM, Ion.NITRATE);
        assertThat(changed.values()).containsExactly(6.0, 2.0, -1.0);
    }

    @Test
    void whatStaysTheSameIsShared() {
        IonAmounts amounts = IonAmounts.of(backwards());
        assertThat(IonAmounts.of(amounts)).isSameAs(amounts);
        assertThat(IonAmounts.changed(amounts, (ion, amount) -> amount * 1)).isSameAs(amounts);
        assertThat(IonAmounts.changed(amounts, (ion, amount) -> ion == Ion.SODIUM ? 2.5 : amount))
                .isNotSameAs(amounts)
                .containsEntry(Ion.SODIUM, 2.5)
                .containsEntry(Ion.CALCIUM, 3.0);
        Map<Ion, Double> minusZero = IonAmounts.of(Map.of(Ion.SODIUM, -0.0));
        assertThat(1
                        / IonAmounts.changed(minusZero, (ion, amount) -> Math.max(0, amount))
                                .get(Ion.SODIUM))
                .isEqualTo(Double.POSITIVE_INFINITY);
    }

    @Test
    void oneIonIsReplacedOrAdded() {
        IonAmounts amounts = IonAmounts.of(backwards());
        assertThat(amounts.with(Ion.SODIUM, 7)).containsEntry(Ion.SODIUM, 7.0).hasSize(3);
        assertThat(amounts.with(Ion.CHLORIDE, 7))
                .containsEntry(Ion.CHLORIDE, 7.0)
                .hasSize(4);
        assertThat(amounts).isEqualTo(backwards());
    }

    @Test
    void sumsHoldTheIonsOfBoth() {
        IonAmounts amounts = IonAmounts.of(backwards());
        assertThat(amounts.plus(Map.of(Ion.SODIUM, 0.5, Ion.SULFATE, 4.0)))
                .isEqualTo(Map.of(Ion.CALCIUM, 3.0, Ion.SODIUM, 2.5, Ion.NITRATE, 1.0, Ion.SULFATE, 4.0));
        assertThat(amounts).isEqualTo(backwards());
    }
}
