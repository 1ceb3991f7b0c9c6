package tunside.water;

import static java.util.Objects.requireNonNull;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tunside.chemistry.Ion;
import tunside.chemistry.IonAmounts;
import tunside.quantity.DissolvedUnit;
import tunside.quantity.EquivalentUnit;
import tunside.reference.Row;
import tunside.reference.Table;

/** The classic slips between a printed report and its entry; words and priors stand in {@code water-slips.csv}. */
public enum Slip {
    SULFATE_AS_SULFUR {
        @Override
        Optional<WaterReport> mended(WaterReport report) {
            return scaled(report, Ion.SULFATE, DissolvedUnit.MG_PER_L, Ion.SULFATE.molarMassGPerMol() / SULFUR);
        }
    },
    SULFATE_NOT_AS_SULFUR {
        @Override
        Optional<WaterReport> mended(WaterReport report) {
            return scaled(report, Ion.SULFATE, DissolvedUnit.MG_PER_L_AS_S, SULFUR / Ion.SULFATE.molarMassGPerMol());
        }
    },
    NITRATE_AS_NITROGEN {
        @Override
        Optional<WaterReport> mended(WaterReport report) {
            return scaled(report, Ion.NITRATE, DissolvedUnit.MG_PER_L, Ion.NITRATE.molarMassGPerMol() / NITROGEN);
        }
    },
    NITRATE_NOT_AS_NITROGEN {
        @Override
        Optional<WaterReport> mended(WaterReport report) {
            return scaled(report, Ion.NITRATE, DissolvedUnit.MG_PER_L_AS_N, NITROGEN / Ion.NITRATE.molarMassGPerMol());
        }
    },
    BICARBONATE_TAKEN_FOR_CALCIUM_CARBONATE {
        @Override
        Optional<WaterReport> mended(WaterReport report) {
            return alkalinity(report, EquivalentUnit.MG_PER_L_AS_CACO3, EquivalentUnit.MG_PER_L_AS_HCO3);
        }
    },
    CALCIUM_CARBONATE_TAKEN_FOR_BICARBONATE {
        @Override
        Optional<WaterReport> mended(WaterReport report) {
            return alkalinity(report, EquivalentUnit.MG_PER_L_AS_HCO3, EquivalentUnit.MG_PER_L_AS_CACO3);
        }
    },
    HARDNESS_TAKEN_FOR_CALCIUM {
        @Override
        Optional<WaterReport> mended(WaterReport report) {
            Double magnesium = report.mmolPerL().get(Ion.MAGNESIUM);
            Optional<WaterReport> all =
                    scaled(report, Ion.CALCIUM, DissolvedUnit.MG_PER_L, asCalciumCarbonate(Ion.CALCIUM));
            if (magnesium == null || all.isEmpty()) {
                return Optional.empty();
            }
            double left = requireNonNull(all.get().mmolPerL().get(Ion.CALCIUM)) - magnesium;
            return left < 0 ? Optional.empty() : Optional.of(with(report, Ion.CALCIUM, left));
        }
    },
    CALCIUM_AS_CALCIUM_CARBONATE {
        @Override
        Optional<WaterReport> mended(WaterReport report) {
            return scaled(report, Ion.CALCIUM, DissolvedUnit.MG_PER_L, asCalciumCarbonate(Ion.CALCIUM));
        }
    },
    MAGNESIUM_AS_CALCIUM_CARBONATE {
        @Override
        Optional<WaterReport> mended(WaterReport report) {
            return scaled(report, Ion.MAGNESIUM, DissolvedUnit.MG_PER_L, asCalciumCarbonate(Ion.MAGNESIUM));
        }
    },
    CALCIUM_AND_MAGNESIUM_AS_CALCIUM_CARBONATE {
        @Override
        Optional<WaterReport> mended(WaterReport report) {
            return CALCIUM_AS_CALCIUM_CARBONATE.mended(report).flatMap(MAGNESIUM_AS_CALCIUM_CARBONATE::mended);
        }
    };

    /** All of them. */
    static final List<Slip> ALL = List.of(values());

    /** Standard atomic weights, g/mol (IUPAC-WEIGHTS). */
    private static final double SULFUR = 32.06;

    private static final double NITROGEN = 14.007;
    private static final double CALCIUM_CARBONATE = 100.086;

    /** What {@code water-slips.csv} says of one; of its prior the logarithm. */
    private record Words(double logPrior, String meaning, String advice) {}

    private static final Map<String, Words> WORDS = load();

    /** Of the probability before looking at the report that nothing is wrong. */
    static final double LOG_PRIOR_OF_NONE = words("none").logPrior;

    /** The same that something else is wrong. */
    static final double LOG_PRIOR_OF_OTHER = words("other").logPrior;

    private static final Map<Slip, Words> OF_SLIPS = new EnumMap<>(Slip.class);

    static {
        for (Slip slip : values()) {
            OF_SLIPS.put(slip, words(slip.id()));
        }
    }

    private final String id = name().toLowerCase(Locale.ROOT).replace('_', '-');

    /** The report as it was meant if this is what happened; empty where it cannot have happened. */
    abstract Optional<WaterReport> mended(WaterReport report);

    /** As answers name it, such as {@code sulfate-as-sulfur}. */
    public String id() {
        return id;
    }

    /** What happened, in words. */
    public String meaning() {
        return words().meaning;
    }

    /** What to do about it, in words. */
    public String advice() {
        return words().advice;
    }

    /** Logarithm of its probability before looking at the report. */
    double logPrior() {
        return words().logPrior;
    }

    private Words words() {
        return requireNonNull(OF_SLIPS.get(this));
    }

    private static Words words(String id) {
        return requireNonNull(WORDS.get(id));
    }

    /** Of a number that counts as CaCO3: the share that is the ion. */
    private static double asCalciumCarbonate(Ion ion) {
        return ion.molarMassGPerMol() / CALCIUM_CARBONATE;
    }

    private static Optional<WaterReport> scaled(WaterReport report, Ion ion, DissolvedUnit printed, double factor) {
        Double amount = report.mmolPerL().get(ion);
        return amount == null || amount == 0 || report.ionUnits().get(ion) != printed
                ? Optional.empty()
                : Optional.of(with(report, ion, amount * factor));
    }

    private static WaterReport with(WaterReport report, Ion ion, double mmolPerL) {
        return report.withIons(IonAmounts.of(report.mmolPerL()).with(ion, mmolPerL));
    }

    private static Optional<WaterReport> alkalinity(WaterReport report, EquivalentUnit printed, EquivalentUnit meant) {
        if (report.alkalinityUnit().isEmpty() || report.alkalinityUnit().get() != printed) {
            return Optional.empty();
        }
        double stated = report.alkalinityMeqPerL().orElse(0);
        double factor = meant.toBase(1) / printed.toBase(1);
        return stated <= 0 ? Optional.empty() : Optional.of(report.withMoreAlkalinity(stated * (factor - 1)));
    }

    private static Map<String, Words> load() {
        Map<String, Words> words = new LinkedHashMap<>();
        double sum = 0;
        Table table = Table.read("water-slips.csv");
        for (Row row : table.rows()) {
            double prior = row.number("prior", 0, 1);
            sum += prior;
            words.put(row.text("slip"), new Words(Math.log(prior), row.text("meaning"), row.text("advice")));
        }
        for (Slip slip : values()) {
            if (!words.containsKey(slip.id())) {
                throw table.rows().get(0).fault("there is no row for '%s'".formatted(slip.id()));
            }
        }
        if (!(Math.abs(sum - 1) < 1e-9)) {
            throw table.rows().get(0).fault("the priors must sum to 1 but to %s".formatted(sum));
        }
        return Collections.unmodifiableMap(words);
    }
}
