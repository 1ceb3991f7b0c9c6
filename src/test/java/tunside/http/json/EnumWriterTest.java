package tunside.http.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tunside.finding.Outcome;
import tunside.quantity.VolumeUnit;
import tunside.water.Slip;

class EnumWriterTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    static {
        new StrictJson().customize(MAPPER);
    }

    /** Whether its type is known beforehand or only by the constant, and whether the constant has a body of its own. */
    private record Held(Outcome outcome, VolumeUnit unit, Slip slip, Object any, List<Object> several) {}

    @Test
    void aConstantIsWrittenByItsNameInTheContract() throws JsonProcessingException {
        Held held = new Held(
                Outcome.PASS,
                VolumeUnit.US_GAL,
                Slip.SULFATE_AS_SULFUR,
                Slip.NITRATE_AS_NITROGEN,
                List.of(Outcome.STOP, VolumeUnit.ML));
        String expected = "{\"outcome\":\"pass\",\"unit\":\"US-gal\",\"slip\":\"sulfate-as-sulfur\","
                + "\"any\":\"nitrate-as-nitrogen\",\"several\":[\"stop\",\"mL\"]}";
        assertThat(MAPPER.writeValueAsString(held)).isEqualTo(expected);
        assertThat(MAPPER.valueToTree(held).toString()).isEqualTo(expected);
        assertThat(MAPPER.writeValueAsString(Map.of("one", Outcome.NOTE))).isEqualTo("{\"one\":\"note\"}");
    }
}
