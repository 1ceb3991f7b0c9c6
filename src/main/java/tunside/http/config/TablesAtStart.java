package tunside.http.config;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Objects;
import tunside.chemistry.Acids;
import tunside.chemistry.Salts;
import tunside.electrode.Buffers;
import tunside.http.answer.Checks;
import tunside.http.answer.Safety;
import tunside.mash.MaltClasses;
import tunside.mash.MashModel;
import tunside.mash.PhRanges;
import tunside.reference.Sources;

/** Loads the reference tables before the first request: a broken row stops the start with its file and line. */
@Singleton
public final class TablesAtStart {
    void load(@Observes StartupEvent event) {
        List<Object> tables = List.of(
                Sources.all(),
                Acids.all(),
                Salts.all(),
                Buffers.all(),
                MaltClasses.all(),
                MashModel.standard(),
                PhRanges.all(),
                Safety.all(),
                Checks.of(List.of()));
        tables.forEach(Objects::requireNonNull);
    }
}
