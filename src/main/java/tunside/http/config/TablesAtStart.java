package tunside.http.config;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Objects;

/**
 * Loads every reference table before the first request, by initialising the classes that read them: a broken row stops
 * the start with its file and line. A test holds the list against the classes that call {@code Table.read}.
 */
@Singleton
public final class TablesAtStart {
    /** Every class that reads a table. */
    static final List<String> READERS = List.of(
            "tunside.reference.Sources",
            "tunside.chemistry.Acids",
            "tunside.chemistry.AcidDensities",
            "tunside.chemistry.LacticOligomers",
            "tunside.chemistry.MetalComplexes",
            "tunside.chemistry.NeatAcidLimits",
            "tunside.chemistry.Salts",
            "tunside.electrode.BufferChange",
            "tunside.electrode.Buffers",
            "tunside.electrode.Cause",
            "tunside.electrode.ElectrodeLimits",
            "tunside.electrode.NextStep",
            "tunside.electrode.reading.ReadingAdvice",
            "tunside.electrode.reading.PublishedShift",
            "tunside.electrode.reading.ReadingLimits",
            "tunside.electrode.reading.ReadingWord",
            "tunside.electrode.reading.TemperatureEffect",
            "tunside.water.Conductivities",
            "tunside.water.IonPairs",
            "tunside.water.Saturation",
            "tunside.water.Slip",
            "tunside.water.WaterChecks",
            "tunside.water.WaterLimits",
            "tunside.water.WaterModel",
            "tunside.mash.MaltClasses",
            "tunside.mash.MashModel",
            "tunside.mash.MillGaps",
            "tunside.mash.PhRanges",
            "tunside.mash.plan.PlanDefaults",
            "tunside.safety.FoodStatus",
            "tunside.safety.HazardStatements",
            "tunside.safety.Hazards",
            "tunside.safety.SafetyNotes",
            "tunside.dosing.AcidDilutionHeats",
            "tunside.dosing.AcidDilutionLimits",
            "tunside.dosing.AcidDilutionWarmth",
            "tunside.dosing.AnionTaste",
            "tunside.dosing.Bases",
            "tunside.dosing.BufferingPriors",
            "tunside.review.Slip",
            "tunside.http.answer.Checks",
            "tunside.http.dilution.DilutionWords",
            "tunside.http.mash.InputWords");

    private volatile boolean loaded;

    /** Whether every table has been read. */
    public boolean areLoaded() {
        return loaded;
    }

    void load(@Observes StartupEvent event) {
        for (String reader : READERS) {
            initialise(reader);
        }
        loaded = true;
    }

    private static void initialise(String reader) {
        try {
            Class.forName(reader, true, TablesAtStart.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException("no class " + reader, e);
        } catch (ExceptionInInitializerError e) {
            Throwable cause = Objects.requireNonNullElse(e.getCause(), e);
            throw new IllegalStateException(cause.getMessage(), cause);
        }
    }
}
