package tunside.safety;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Acids;

class JurisdictionTest {
    @Test
    void everySupplyLimitBelongsToOneJurisdiction() {
        List<String> regions =
                Arrays.stream(Jurisdiction.values()).map(Jurisdiction::region).toList();
        assertThat(Acids.all().keySet())
                .allSatisfy(acid -> assertThat(Hazards.supplyLimits(acid))
                        .extracting(Hazards.SupplyLimit::region)
                        .isSubsetOf(regions));
        assertThat(regions).containsExactly("Great Britain", "European Union");
    }

    @Test
    void limitsAreThoseOfThePlace() {
        assertThat(Jurisdiction.EUROPEAN_UNION.limits("sulfuric"))
                .extracting(Hazards.SupplyLimit::abovePercent)
                .containsExactly(15.0, 40.0);
        assertThat(Jurisdiction.GREAT_BRITAIN.limits("sulfuric")).hasSize(1);
        assertThat(Jurisdiction.EUROPEAN_UNION.limits("phosphoric")).isEmpty();
        assertThat(Jurisdiction.EUROPEAN_UNION.limitsAbove("sulfuric", 40)).hasSize(1);
        assertThat(Jurisdiction.EUROPEAN_UNION.limitsAbove("sulfuric", 40.1)).hasSize(2);
        assertThat(Jurisdiction.GREAT_BRITAIN.limitsAbove("hydrochloric", 10)).isEmpty();
        assertThat(Jurisdiction.GREAT_BRITAIN.limitsAbove("hydrochloric", 10.1)).hasSize(1);
    }

    @Test
    void whereNoneIsNamedAllAreLookedAt() {
        assertThat(Jurisdiction.orAll(Optional.empty())).containsExactly(Jurisdiction.values());
        assertThat(Jurisdiction.orAll(Optional.of(Jurisdiction.GREAT_BRITAIN)))
                .containsExactly(Jurisdiction.GREAT_BRITAIN);
    }

    @Test
    void aLabelCarriesTheStrongestSignalWord() {
        assertThat(HazardStatements.signal(List.of("H290", "H314", "H302"))).isEqualTo(SignalWord.DANGER);
        assertThat(HazardStatements.signal(List.of("H318"))).isEqualTo(SignalWord.DANGER);
        assertThat(HazardStatements.signal(List.of("H315", "H319"))).isEqualTo(SignalWord.WARNING);
        assertThat(HazardStatements.signal(List.of("EUH071"))).isEqualTo(SignalWord.NONE);
        assertThat(HazardStatements.signal(List.of())).isEqualTo(SignalWord.NONE);
    }
}
