package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
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
    void aCopyIsInTheOrderOfTheIonsAndIsOneOfItsOwn() {
        Map<Ion, Double> amounts = backwards();
        Map<Ion, Double> copy = IonAmounts.copy(Collections.unmodifiableMap(amounts));
        assertThat(copy.keySet()).containsExactly(Ion.CALCIUM, Ion.SODIUM, Ion.NITRATE);
        assertThat(copy).isEqualTo(amounts);
        copy.put(Ion.CHLORIDE, 4.0);
        assertThat(amounts).hasSize(3);
    }

    @Test
    void everyAmountIsChangedAndNoneIsAdded() {
        Map<Ion, Double> changed = IonAmounts.changed(backwards(), (ion, amount) -> amount * ion.charge());
        assertThat(changed.keySet()).containsExactly(Ion.CALCIUM, Ion.SODIUM, Ion.NITRATE);
        assertThat(changed.values()).containsExactly(6.0, 2.0, -1.0);
    }
}
