package tunside.http.answer;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tunside.http.json.StrictJson;

class LastingListTest {
    private record Answer(List<SafetyAdvice> safety, List<Integer> numbers) {}

    private static ObjectMapper mapper() {
        ObjectMapper mapper = new ObjectMapper();
        new StrictJson().customize(mapper);
        return mapper;
    }

    @Test
    void everyWritingReadsLikeThatOfAPlainList() throws IOException {
        List<SafetyAdvice> plain = List.copyOf(Safety.all());
        Answer lasting = new Answer(Safety.all(), LastingList.of(List.of(1, 2)));
        String expected = mapper().writeValueAsString(new Answer(plain, List.of(1, 2)));
        assertThat(expected).contains("\"numbers\":[1,2]").contains(plain.get(0).code());
        for (int time = 0; time < 3; time++) {
            assertThat(mapper().writeValueAsString(lasting)).isEqualTo(expected);
            assertThat(new String(mapper().writeValueAsBytes(lasting), StandardCharsets.UTF_8))
                    .isEqualTo(expected);
            assertThat((Object) mapper().valueToTree(lasting)).isEqualTo(mapper().readTree(expected));
        }
    }

    @Test
    void whatTheGivenListBecomesChangesNothing() {
        List<Integer> given = new ArrayList<>(List.of(1));
        List<Integer> lasting = LastingList.of(given);
        given.add(2);
        assertThat(lasting).containsExactly(1);
    }

    @Test
    void oneWithMoreIsAnotherAndIsWrittenAsSuch() throws IOException {
        LastingList<Integer> shorter = LastingList.of(List.of(1, 2));
        assertThat(mapper().writeValueAsString(new Answer(List.of(), shorter))).contains("[1,2]");
        LastingList<Integer> longer = shorter.with(3);
        assertThat(longer).containsExactly(1, 2, 3);
        assertThat(shorter).containsExactly(1, 2);
        assertThat(mapper().writeValueAsString(new Answer(List.of(), longer))).contains("[1,2,3]");
    }
}
