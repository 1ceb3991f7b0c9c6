package tunside.electrode;

import static java.util.Objects.requireNonNull;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import tunside.reference.Row;
import tunside.reference.Table;

/** What may lie behind the pattern of a calibration; its words stand in {@code electrode-causes.csv}. */
public enum Cause {
    SOUND,
    NEUTRAL_BUFFER_IS_6_86,
    NEUTRAL_BUFFER_IS_7_00,
    ALKALINE_BUFFER_IS_9_18,
    ALKALINE_BUFFER_IS_10_01,
    SWAPPED_CUPS,
    WRONG_TEMPERATURE,
    WRONG_WATER_VOLUME,
    CARBON_DIOXIDE,
    CRACKED_BULB,
    COATED_BULB,
    SLOW_JUNCTION,
    WEAK_GLASS,
    UNEXPLAINED;

    private static final Map<Cause, Words> WORDS = words();
    private static final Map<String, Map<String, Double>> MODEL = model();
    private static final Map<Cause, Double> PRIORS = priors();
    private static final Map<Cause, Map<MeterReadout, Electrode>> ELECTRODES = electrodes();

    /**
     * What a cause makes of an electrode.
     *
     * @param slopeMean fraction of the ideal slope
     * @param slopeSd its standard deviation
     * @param offsetSd of the offset, mV
     * @param extraPhSd by which a buffer is further off, pH
     * @param logSettlingMedian logarithm of the median settling time in s
     * @param settlingLogSd standard deviation of that logarithm
     */
    record Electrode(
            double slopeMean,
            double slopeSd,
            double offsetSd,
            double extraPhSd,
            double logSettlingMedian,
            double settlingLogSd) {}

    private record Words(boolean stops, String parameter, String unit, String meaning, String nextStep) {}

    private Words own() {
        return requireNonNull(WORDS.get(this));
    }

    /** Whether a calibration that rests on it must not be used. */
    public boolean stops() {
        return own().stops;
    }

    /** What its parameter is, in words; empty for a cause without one. */
    public Optional<String> parameter() {
        return Optional.of(own().parameter).filter(text -> !text.isEmpty());
    }

    /** Unit of its parameter; empty for a cause without one. */
    public Optional<String> unit() {
        return Optional.of(own().unit).filter(text -> !text.isEmpty());
    }

    /** In words. */
    public String meaning() {
        return own().meaning;
    }

    /** What to do about it. */
    public NextStep nextStep() {
        return NextStep.of(own().nextStep);
    }

    /** Weight before any reading. */
    double prior() {
        return requireNonNull(PRIORS.get(this));
    }

    /** Standard deviation of its parameter before any reading. */
    double parameterSd() {
        return value("parameter-sd", key());
    }

    /** The parameter as an answer states it: powder and water are tried by the logarithm of their ratio. */
    double shown(double parameter) {
        return this == WRONG_WATER_VOLUME ? Math.pow(2, parameter) : parameter;
    }

    /** The electrode behind it: what the cause has no row for is that of a sound electrode with such a readout. */
    Electrode electrode(MeterReadout readout) {
        return requireNonNull(requireNonNull(ELECTRODES.get(this)).get(readout));
    }

    private String key() {
        return key(name());
    }

    private static String key(String name) {
        return name.toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }

    private static double value(String quantity, String... keys) {
        for (String key : keys) {
            Double value = MODEL.getOrDefault(key, Map.of()).get(quantity);
            if (value != null) {
                return value;
            }
        }
        throw new IllegalStateException("electrode-cause-model.csv has no %s of %s".formatted(quantity, keys[0]));
    }

    private static Map<Cause, Double> priors() {
        Map<Cause, Double> priors = new EnumMap<>(Cause.class);
        for (Cause cause : values()) {
            priors.put(cause, value("prior", cause.key()));
        }
        return priors;
    }

    private static Map<Cause, Map<MeterReadout, Electrode>> electrodes() {
        Map<Cause, Map<MeterReadout, Electrode>> electrodes = new EnumMap<>(Cause.class);
        for (Cause cause : values()) {
            Map<MeterReadout, Electrode> own = new EnumMap<>(MeterReadout.class);
            for (MeterReadout readout : MeterReadout.values()) {
                String[] keys = {cause.key(), "sound-" + key(readout.name()), "sound"};
                own.put(
                        readout,
                        new Electrode(
                                value("slope-mean", keys),
                                value("slope-sd", keys),
                                value("offset-sd", keys),
                                requireNonNull(MODEL.get(cause.key())).getOrDefault("extra-ph-sd", 0.0),
                                Math.log(value("settling-median", keys)),
                                value("settling-log-sd", keys)));
            }
            electrodes.put(cause, own);
        }
        return electrodes;
    }

    private static Map<Cause, Words> words() {
        Map<Cause, Words> words = new EnumMap<>(Cause.class);
        for (Row row : Table.read("electrode-causes.csv").rows()) {
            words.put(
                    TableEnums.of(Cause.class, row, "cause"),
                    new Words(
                            row.text("stops").equals("yes"),
                            row.optionalText("parameter"),
                            row.optionalText("unit"),
                            row.text("meaning"),
                            row.text("next_step")));
        }
        for (Cause cause : values()) {
            if (!words.containsKey(cause)) {
                throw new IllegalStateException("electrode-causes.csv has no row of " + cause);
            }
        }
        return words;
    }

    private static Map<String, Map<String, Double>> model() {
        Map<String, Map<String, Double>> model = new LinkedHashMap<>();
        for (Row row : Table.read("electrode-cause-model.csv").rows()) {
            model.computeIfAbsent(row.text("cause"), key -> new LinkedHashMap<>())
                    .put(row.text("quantity"), row.number("value"));
        }
        return model;
    }
}
