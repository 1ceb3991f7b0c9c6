package tunside.http.guard;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class AllowedOriginsTest {
    private static final String BENCH = "https://bench.example";

    @Test
    void aListOfOriginsIsFineWithAndWithoutCredentials() {
        assertThatCode(() -> AllowedOrigins.refuseIfOpen(true, List.of(BENCH), false))
                .doesNotThrowAnyException();
        assertThatCode(() -> AllowedOrigins.refuseIfOpen(true, List.of(BENCH), true))
                .doesNotThrowAnyException();
    }

    @Test
    void whatIsOffIsNotChecked() {
        assertThatCode(() -> AllowedOrigins.refuseIfOpen(false, List.of("*"), true))
                .doesNotThrowAnyException();
    }

    @Test
    void anyOriginWithCredentialsIsRefusedHoweverItIsWritten() {
        for (String any : List.of("*", " * ", "/.*/", "/https:.*/")) {
            assertThatThrownBy(() -> AllowedOrigins.refuseIfOpen(true, List.of(BENCH, any), true))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContaining("quarkus.http.cors.origins");
        }
        assertThatCode(() -> AllowedOrigins.refuseIfOpen(true, List.of("*"), false))
                .doesNotThrowAnyException();
    }

    @Test
    void switchedOnWithoutAListIsRefused() {
        assertThatThrownBy(() -> AllowedOrigins.refuseIfOpen(true, List.of(), false))
                .hasMessageContaining("names no origin");
    }
}
