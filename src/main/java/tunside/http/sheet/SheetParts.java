package tunside.http.sheet;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;
import tunside.electrode.Calibration;
import tunside.finding.Outcome;
import tunside.http.answer.Check;
import tunside.http.answer.Rounded;
import tunside.http.calibration.CalibrationDocument;
import tunside.http.json.ContractNames;
import tunside.http.mash.AdditionRequest;
import tunside.http.mash.MaltRequest;
import tunside.http.problem.Place;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.http.quantity.DissolvedQuantity;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.http.sheet.BrewDaySheet.Fact;
import tunside.http.sheet.BrewDaySheet.Ingredient;
import tunside.http.sheet.BrewDaySheet.Warning;
import tunside.http.water.LiquorMapper;
import tunside.http.water.LiquorRequest;
import tunside.http.water.TreatmentRequest;
import tunside.http.water.WaterRequest;
import tunside.http.water.WaterSourceRequest;
import tunside.water.TreatmentStep;

/** What sheets have in common, cut to what one page holds. */
final class SheetParts {
    private static final int MOST_WARNINGS = 3;
    private static final int MOST_REPORTS = 2;

    private SheetParts() {}

    static String amount(@Nullable MassQuantity mass, @Nullable VolumeQuantity volume) {
        return volume != null
                ? Rounded.text(volume.value()) + " " + volume.unit().symbol()
                : Rounded.text(requireNonNull(mass).value()) + " " + mass.unit().symbol();
    }

    static String words(String id) {
        return id.replace('-', ' ');
    }

    static Ingredient malt(MaltRequest malt) {
        String colour = malt.colour() == null
                ? ""
                : ", %s %s"
                        .formatted(
                                Rounded.text(malt.colour().value()),
                                malt.colour().unit().symbol());
        String product = malt.product() == null ? "" : ", " + malt.product();
        String measured = malt.measured() == null ? "" : ", measured lot";
        return new Ingredient(words(malt.malt()) + " malt" + product + colour + measured, amount(malt.mass(), null));
    }

    static Ingredient addition(AdditionRequest addition) {
        return new Ingredient(
                chemical(addition.acid(), addition.strength(), addition.salt()),
                amount(addition.mass(), addition.volume()));
    }

    private static String chemical(@Nullable String acid, @Nullable StrengthQuantity strength, @Nullable String salt) {
        if (acid == null) {
            return words(requireNonNull(salt));
        }
        return words(acid) + " acid"
                + (strength == null
                        ? ""
                        : ", %s %s"
                                .formatted(
                                        Rounded.text(strength.value()),
                                        strength.unit().symbol()));
    }

    /** The waters, each with what its report says, then what is done to all of it. */
    static List<Ingredient> liquor(LiquorRequest liquor) {
        List<Ingredient> parts = new ArrayList<>();
        if (liquor.sources() == null) {
            parts.add(new Ingredient(report(liquor.water()), amount(null, liquor.volume())));
        } else {
            boolean few = liquor.sources().size() <= MOST_REPORTS;
            liquor.sources().forEach(source -> parts.add(source(source, few)));
        }
        if (liquor.treatments() != null) {
            List<TreatmentStep> done = LiquorMapper.prepared(liquor).steps();
            for (int i = 0; i < done.size(); i++) {
                parts.add(treatment(liquor.treatments().get(i), done.get(i)));
            }
        }
        return parts;
    }

    private static Ingredient source(WaterSourceRequest source, boolean withReport) {
        StringJoiner name = new StringJoiner(": ");
        if (source.name() != null) {
            name.add(source.name());
        }
        if (withReport || source.name() == null) {
            name.add(report(source.water()));
        }
        String membrane = source.residualShare() == null
                ? ""
                : ", through a membrane that lets %s %% by"
                        .formatted(Rounded.text(Rounded.significant(100 * source.residualShare(), 3)));
        return new Ingredient(name + membrane, amount(null, source.volume()));
    }

    private static Ingredient treatment(TreatmentRequest treatment, TreatmentStep done) {
        if (treatment.boiling() != null) {
            String lid = Boolean.TRUE.equals(treatment.boiling().lidOn()) ? "with the lid on" : "without a lid";
            return new Ingredient("then boil " + lid + ", let it settle, draw it off its deposit", "");
        }
        if (treatment.liming() != null) {
            return new Ingredient(
                    "then stir in slaked lime, let it settle, draw it off its deposit",
                    amount(MassQuantity.grams(done.grams(), 2), null));
        }
        return new Ingredient(
                "then " + chemical(treatment.acid(), treatment.strength(), treatment.salt()),
                amount(treatment.mass(), treatment.volume()));
    }

    private static String report(@Nullable WaterRequest water) {
        StringJoiner report = new StringJoiner(", ");
        if (water != null) {
            dissolved(report, "Ca", water.calcium());
            dissolved(report, "Mg", water.magnesium());
            dissolved(report, "Na", water.sodium());
            dissolved(report, "Cl", water.chloride());
            dissolved(report, "SO4", water.sulfate());
            AlkalinityQuantity alkalinity = water.alkalinity();
            if (alkalinity != null) {
                report.add("alkalinity %s %s"
                        .formatted(
                                Rounded.text(alkalinity.value()),
                                alkalinity.unit().symbol()));
            }
        }
        return report.length() == 0 ? "distilled water" : report.toString();
    }

    private static void dissolved(StringJoiner report, String ion, @Nullable DissolvedQuantity quantity) {
        if (quantity != null) {
            report.add("%s %s %s"
                    .formatted(
                            ion, Rounded.text(quantity.value()), quantity.unit().symbol()));
        }
    }

    /** The gravest first. */
    static List<Warning> warnings(List<Check> checks) {
        List<Warning> warnings = new ArrayList<>();
        checks.stream()
                .filter(check -> check.outcome() == Outcome.STOP)
                .forEach(check -> warnings.add(new Warning("STOP.", check.message())));
        checks.stream()
                .filter(check -> check.outcome() == Outcome.CAUTION)
                .forEach(check -> warnings.add(new Warning("Caution.", check.message())));
        if (warnings.size() <= MOST_WARNINGS) {
            return warnings;
        }
        List<Warning> first = new ArrayList<>(warnings.subList(0, MOST_WARNINGS));
        first.add(new Warning(
                "%s more".formatted(warnings.size() - MOST_WARNINGS),
                "checks say caution or stop: read them in the answer."));
        return first;
    }

    static boolean stopped(List<Check> checks) {
        return checks.stream().anyMatch(check -> check.outcome() == Outcome.STOP);
    }

    /** What the question says of the electrode and its readings; the rest is to be filled in. */
    static List<Fact> electrode(
            @Nullable CalibrationDocument document,
            @Nullable Double phUncertainty,
            @Nullable Double sharedUncertainty) {
        List<Fact> facts = new ArrayList<>();
        if (document == null) {
            for (String blank : List.of("Verdict", "Slope, % of ideal", "Offset, mV", "Buffers")) {
                facts.add(new Fact(blank, ""));
            }
        } else {
            Calibration calibration = document.toCalibration(Place.root());
            facts.add(new Fact("Verdict", ContractNames.of(calibration.verdict())));
            facts.add(new Fact(
                    "Slope, % of ideal",
                    "%s ± %s"
                            .formatted(
                                    Rounded.text(Rounded.decimals(calibration.slopePercent(), 1)),
                                    Rounded.text(Rounded.significant(calibration.slopePercentUncertainty(), 2)))));
            facts.add(new Fact(
                    "Offset, mV",
                    "%s ± %s"
                            .formatted(
                                    Rounded.text(Rounded.decimals(calibration.offsetMv(), 1)),
                                    Rounded.text(Rounded.significant(Math.sqrt(calibration.offsetVariance()), 2)))));
            facts.add(new Fact(
                    "Buffers",
                    "pH %s to %s at %s °C"
                            .formatted(
                                    Rounded.text(Rounded.decimals(calibration.lowestPh(), 2)),
                                    Rounded.text(Rounded.decimals(calibration.highestPh(), 2)),
                                    Rounded.text(Rounded.decimals(
                                            calibration.temperature().celsius(), 1)))));
        }
        facts.add(new Fact("Calibrated on, at", ""));
        facts.add(new Fact("Buffer read again", ""));
        if (phUncertainty != null) {
            facts.add(new Fact("Uncertainty of a reading", "± " + Rounded.text(phUncertainty)));
        }
        if (sharedUncertainty != null) {
            facts.add(new Fact("Shared by all readings", "± " + Rounded.text(sharedUncertainty)));
        }
        return facts;
    }
}
