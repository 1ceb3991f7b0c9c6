package tunside.http;

import io.quarkus.runtime.Application;
import io.quarkus.runtime.LaunchMode;
import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.QuarkusApplication;
import io.quarkus.runtime.annotations.QuarkusMain;
import jakarta.inject.Inject;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Starts the service; its last line of log is an address and a command to try. */
@QuarkusMain
public final class Main implements QuarkusApplication {
    private static final Logger LOG = Logger.getLogger("tunside");

    @Inject
    @ConfigProperty(name = "quarkus.http.port")
    int port;

    /** Entry point. */
    public static void main(String... args) {
        Quarkus.run(Main.class, args);
    }

    @Override
    public int run(String... args) {
        String address = "http://localhost:" + port;
        LOG.infof(
                "Tunside answers at %s, its contract is at %s/q/swagger-ui. Try:%n%s",
                address, address, firstQuestion(address));
        if (LaunchMode.current() == LaunchMode.NORMAL) {
            Application application = Application.currentApplication();
            Runtime.getRuntime().addShutdownHook(new Thread(() -> endWell(application), "end"));
        }
        Quarkus.waitForExit();
        return 0;
    }

    /** A JVM that SIGTERM ends says 143 even where everything was answered and closed in order; that is an end without fault. */
    private static void endWell(Application application) {
        application.awaitShutdown();
        System.out.flush();
        Runtime.getRuntime().halt(0);
    }

    private static String firstQuestion(String address) {
        return "curl -s '" + address + "/v1/buffers?temperature=25&unit=degC'";
    }
}
