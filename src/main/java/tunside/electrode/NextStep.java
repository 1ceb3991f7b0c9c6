package tunside.electrode;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * What to do after a calibration, from {@code electrode-next-steps.csv}.
 *
 * @param id of the step
 * @param message what to do
 * @param source id of its source
 */
public record NextStep(String id, String message, String source) {
    private static final Map<String, NextStep> ALL = load();

    static NextStep of(String id) {
        NextStep step = ALL.get(id);
        if (step == null) {
            throw new IllegalStateException("electrode-next-steps.csv has no step " + id);
        }
        return step;
    }

    /** What readings of this kind cannot tell, from {@code electrode-unknowns.csv}; empty for millivolts. */
    static List<String> unknowns(MeterReadout readout) {
        List<String> unknowns = new ArrayList<>();
        if (readout != MeterReadout.POTENTIAL) {
            String own = readout.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
            for (Row row : Table.read("electrode-unknowns.csv").rows()) {
                if (row.text("state").equals("displayed") || row.text("state").equals(own)) {
                    unknowns.add(row.text("message"));
                }
            }
        }
        return unknowns;
    }

    private static Map<String, NextStep> load() {
        Map<String, NextStep> steps = new LinkedHashMap<>();
        for (Row row : Table.read("electrode-next-steps.csv").rows()) {
            steps.put(row.text("step"), new NextStep(row.text("step"), row.text("message"), row.source()));
        }
        return steps;
    }
}
