package tunside.http.dosing;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.NeatAcidLimits;
import tunside.chemistry.Salt;
import tunside.chemistry.Solution;
import tunside.dosing.AcidDilution;
import tunside.dosing.AnionTaste;
import tunside.dosing.Bases;
import tunside.dosing.DosableLiquid;
import tunside.dosing.DoseAdvice;
import tunside.dosing.DoseAim;
import tunside.dosing.DoseChecks;
import tunside.dosing.DoseOutcome;
import tunside.dosing.DoseQuestion;
import tunside.dosing.DosedLiquid;
import tunside.dosing.LiquorDose;
import tunside.dosing.MashDose;
import tunside.dosing.PastAddition;
import tunside.dosing.PhReading;
import tunside.dosing.Reagent;
import tunside.dosing.Supply;
import tunside.dosing.WortDose;
import tunside.finding.Finding;
import tunside.http.answer.Rounded;
import tunside.http.calibration.CalibrationDocument;
import tunside.http.json.KnownIds;
import tunside.http.mash.AdditionMapper;
import tunside.http.mash.ExperienceDocument;
import tunside.http.mash.GristMapper;
import tunside.http.problem.Place;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.water.LiquorMapper;
import tunside.mash.Experience;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Mash;
import tunside.mash.MashConditions;
import tunside.mash.MashModel;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

/**
 * A dose question as read.
 *
 * @param question for the science
 * @param liquid that is dosed
 * @param bought the acid as bought, if one is named
 * @param dosed the acid as it is dosed: diluted where it is too strong
 * @param base to raise the pH with
 * @param liquorProducts acids that treated the liquor
 * @param liquorSalts salts and bases that treated the liquor
 * @param findings about what was read
 */
record AcidDoseReading(
        DoseQuestion question,
        DosableLiquid liquid,
        Optional<AcidProduct> bought,
        Optional<AcidProduct> dosed,
        Bases.Base base,
        List<AcidProduct> liquorProducts,
        List<Salt> liquorSalts,
        List<Finding> findings) {
    private static final double USUAL_STEP_ML = 0.5;
    private static final double USUAL_STEP_G = 0.1;
    private static final double SMALLEST_STEP = 1e-5;
    private static final double MOST_ADDED = 100;
    private static final double MOST_KG = 1000;

    /** Reads the whole question; throws with all faults if there are any. */
    static AcidDoseReading of(AcidDoseRequest request) {
        return new Reader(request, Place.root()).read();
    }

    /** Products that are handled, for their hazards. */
    List<AcidProduct> products() {
        Set<AcidProduct> products = new LinkedHashSet<>();
        bought.ifPresent(products::add);
        dosed.ifPresent(products::add);
        products.addAll(liquorProducts);
        return List.copyOf(products);
    }

    /** The anion that all acid leaves, history included, where it is the acid's. */
    Optional<AnionTaste> anionAfter(DoseAdvice advice) {
        double grams = acidGrams(advice);
        return grams > 0 && !advice.stopped()
                ? dosed.map(product -> AnionTaste.of(
                        product.acid(),
                        grams * product.molPerKg(),
                        liquid.volume().litres()))
                : Optional.empty();
    }

    /** pH of a liquor once its carbon dioxide has escaped, where acid was dosed. */
    OptionalDouble openPhAfter(DoseAdvice advice) {
        if (!(liquid instanceof LiquorDose liquor)
                || !(advice.outcome() instanceof DoseOutcome.Dose)
                || question.history().stream().anyMatch(past -> !past.reagent().acid())) {
            return OptionalDouble.empty();
        }
        AcidProduct product = dosed.orElseThrow();
        Solution after = liquor.dosed(product, acidGrams(advice) * Reagent.actingMillimolesPerGram(product));
        return OptionalDouble.of(LiquorDose.openPh(after));
    }

    private double acidGrams(DoseAdvice advice) {
        if (dosed.isEmpty()) {
            return 0;
        }
        String acid = dosed.get().acid().id();
        double grams = advice.outcome() instanceof DoseOutcome.Dose dose
                ? dose.staged().totalGrams()
                : 0;
        for (PastAddition past : question.history()) {
            grams += past.reagent().id().equals(acid) ? past.grams() : 0;
        }
        return grams;
    }

    /** Reads one request. */
    private static final class Reader {
        private final AcidDoseRequest request;
        private final Place place;
        private final List<Finding> findings = new ArrayList<>();
        private final List<AcidProduct> liquorProducts = new ArrayList<>();
        private final List<Salt> liquorSalts = new ArrayList<>();
        private final Map<AcidProduct, Reagent> acids = new HashMap<>(); // one a product: its curve may be costly
        private final Map<Salt, Reagent> bases = new HashMap<>();

        Reader(AcidDoseRequest request, Place place) {
            this.request = request;
            this.place = place;
        }

        AcidDoseReading read() {
            Optional<AcidProduct> bought = product(request.acid(), request.strength(), place);
            Optional<AcidProduct> dosed = bought.map(product -> NeatAcidLimits.reachedBy(product)
                    ? AcidProduct.of(product.acid(), Strength.percent(AcidDilution.DOSING_PERCENT))
                    : product);
            Optional<Bases.Base> base = base(request.base(), place.member("base"));
            DoseAim aim = aim();
            double uncertainty = orElse(request.phUncertainty(), DoseChecks.usualUncertainty());
            double stepMl = request.smallestStep() == null
                    ? USUAL_STEP_ML
                    : request.smallestStep()
                            .toVolume(place.member("smallestStep"), SMALLEST_STEP, 1)
                            .millilitres();
            double stepGrams = request.smallestMass() == null
                    ? USUAL_STEP_G
                    : request.smallestMass()
                            .toMass(place.member("smallestMass"), SMALLEST_STEP, 1)
                            .grams();
            double most = request.available() == null
                    ? MOST_KG * 1000
                    : request.available()
                            .toMass(place.member("available"), 0, MOST_KG)
                            .grams();
            misplaced();
            Optional<DosableLiquid> liquid = liquid(dosed);
            place.stopIfFaulty();
            DosableLiquid known = liquid.orElseThrow();
            PhReading start = new PhReading(startPh(known), uncertainty);
            Optional<Supply> acid = dosed.map(product ->
                    known.acid(product, product.solid() ? stepGrams : stepMl * product.densityGPerMl(), most));
            acid.ifPresent(supply -> acids.put(dosed.orElseThrow(), supply.reagent()));
            Supply supplyOfBase = known.base(base.orElseThrow().salt(), stepGrams);
            bases.put(base.orElseThrow().salt(), supplyOfBase.reagent());
            List<PastAddition> history = history(request.history(), known, dosed, uncertainty, place.member("history"));
            findings.add(DoseChecks.reading(start, request.phUncertainty() != null));
            if (request.calibration() != null) {
                findings.add(DoseChecks.calibration(request.calibration().verdict()));
            }
            findings.add(DoseChecks.range(
                    request.lowPh() != null && request.highPh() != null,
                    request.liquid().halfWidthPh()));
            findings.add(DoseChecks.target(request.liquid(), aim.targetPh()));
            if (known instanceof MashDose mash) {
                findings.add(mash.finding(start));
            }
            place.stopIfFaulty();
            place.member("history").build(() -> known.plausible(history, aim.targetPh()), history);
            place.stopIfFaulty();
            DoseQuestion question = place.member("acid")
                    .build(
                            () -> DoseQuestion.of(
                                    known,
                                    start,
                                    orElse(request.sharedUncertainty(), 0),
                                    history,
                                    aim,
                                    acid,
                                    supplyOfBase),
                            null);
            place.stopIfFaulty();
            return new AcidDoseReading(
                    question,
                    known,
                    bought,
                    dosed,
                    base.orElseThrow(),
                    List.copyOf(liquorProducts),
                    List.copyOf(liquorSalts),
                    List.copyOf(findings));
        }

        private static Optional<AcidProduct> product(
                @Nullable String acid, @Nullable StrengthQuantity strength, Place place) {
            if (acid == null) {
                if (strength != null) {
                    place.member("acid").fault("is missing: the strength belongs to an acid");
                }
                return Optional.empty();
            }
            return AdditionMapper.toProduct(
                    acid, strength == null ? null : strength.toStrength(place.member("strength")), place);
        }

        private Optional<Bases.Base> base(@Nullable String id, Place at) {
            String named = id == null ? Bases.USUAL : id;
            Optional<Bases.Base> base = Bases.find(named);
            if (base.isEmpty()) {
                at.fault(KnownIds.BASE.fault(named));
            } else if (request.liquid() == DosedLiquid.LIQUOR && !base.get().forLiquor()) {
                at.fault("\"%s\" does not dissolve in a liquor by stirring; choose another base".formatted(named));
            }
            return base;
        }

        private DoseAim aim() {
            double half = request.liquid().halfWidthPh();
            double target = request.targetPh();
            double low = Rounded.decimals(orElse(request.lowPh(), target - half), 6);
            double high = Rounded.decimals(orElse(request.highPh(), target + half), 6);
            return place.member("targetPh")
                    .build(
                            () -> new DoseAim(target, low, high, orElse(request.acceptedRisk(), DoseAim.USUAL_RISK)),
                            null);
        }

        private void misplaced() {
            boolean mash = request.liquid() == DosedLiquid.MASH;
            boolean liquor = request.liquid() == DosedLiquid.LIQUOR;
            CalibrationDocument.check(request.calibration(), place.member("calibration"));
            belongs("grist", request.grist(), mash, "a mash");
            belongs("additions", request.additions(), mash, "a mash");
            belongs("millGapMm", request.millGapMm(), mash, "a mash");
            belongs("experience", request.experience(), mash, "a mash");
            belongs("liquor", request.liquor(), mash || liquor, "a mash or liquor");
            belongs("temperature", request.temperature(), liquor, "a liquor; other samples are read cooled");
            belongs("volume", request.volume(), !mash && !liquor, "wort or beer");
            belongs("originalExtractPlato", request.originalExtractPlato(), !mash && !liquor, "wort or beer");
            belongs("specificGravity", request.specificGravity(), !mash && !liquor, "wort or beer");
            belongs("malt", request.malt(), !mash && !liquor, "wort or beer");
            belongs("benchTitration", request.benchTitration(), !mash && !liquor, "wort or beer");
            if (mash) {
                needed("grist", request.grist());
            }
            if (mash || liquor) {
                needed("liquor", request.liquor());
            } else {
                needed("volume", request.volume());
            }
            if (!liquor) {
                needed("measuredPh", request.measuredPh());
            }
        }

        private void belongs(String member, @Nullable Object value, boolean here, String to) {
            if (value != null && !here) {
                place.member(member).fault("belongs to " + to);
            }
        }

        private void needed(String member, @Nullable Object value) {
            if (value == null) {
                place.member(member)
                        .fault("is missing: a %s needs it"
                                .formatted(request.liquid().name().toLowerCase(java.util.Locale.ROOT)));
            }
        }

        private Optional<DosableLiquid> liquid(Optional<AcidProduct> dosed) {
            return switch (request.liquid()) {
                case MASH -> mash();
                case LIQUOR -> liquor();
                case WORT, BEER -> wort(dosed);
            };
        }

        private LiquorMapper.Liquor treatedLiquor() {
            LiquorMapper.Liquor liquor =
                    LiquorMapper.toLiquor(requireNonNull(request.liquor()), place.member("liquor"));
            liquorProducts.addAll(liquor.products());
            liquorSalts.addAll(liquor.salts());
            return liquor;
        }

        private Optional<DosableLiquid> mash() {
            if (request.grist() == null || request.liquor() == null) {
                return Optional.empty();
            }
            List<GristPart> parts = GristMapper.toParts(request.grist(), place.member("grist"));
            LiquorMapper.Liquor liquor = treatedLiquor();
            AdditionMapper.Additions additions =
                    AdditionMapper.toAdditions(request.additions(), place.member("additions"));
            MashConditions conditions = new MashConditions(
                    request.millGapMm() == null ? OptionalDouble.empty() : OptionalDouble.of(request.millGapMm()),
                    Optional.empty(),
                    false);
            Experience experience = ExperienceDocument.toExperience(request.experience(), place.member("experience"));
            findings.addAll(GristMapper.findings(parts, place.member("grist")));
            findings.addAll(liquor.water().findings());
            findings.addAll(additions.findings());
            return Optional.ofNullable(place.member("additions")
                    .build(
                            () -> new MashDose(new Mash(
                                    GristMapper.toGrist(parts),
                                    Liquor.of(liquor.volume(), liquor.water()),
                                    additions.additions(),
                                    conditions,
                                    MashModel.standard().withExperience(experience))),
                            null));
        }

        private Optional<DosableLiquid> liquor() {
            if (request.liquor() == null) {
                return Optional.empty();
            }
            LiquorMapper.Liquor liquor = treatedLiquor();
            Temperature temperature = request.temperature() == null
                    ? new Temperature(20)
                    : request.temperature().toTemperature(place.member("temperature"), 0, 100);
            findings.addAll(liquor.water().findings());
            LiquorDose dose = LiquorDose.of(liquor.water().solution(), liquor.volume(), temperature);
            LiquorDose measured = request.measuredPh() == null ? dose : dose.at(request.measuredPh());
            if (!(measured.startPh() >= 2.5 && measured.startPh() <= 10.5)) {
                place.member("liquor")
                        .fault("must have a pH from 2.5 to 10.5 at its temperature but has %s"
                                .formatted(Rounded.text(Rounded.decimals(measured.startPh(), 2))));
                return Optional.empty();
            }
            return Optional.of(measured);
        }

        private Optional<DosableLiquid> wort(Optional<AcidProduct> dosed) {
            if (request.volume() == null) {
                return Optional.empty();
            }
            boolean beer = request.liquid() == DosedLiquid.BEER;
            Volume volume = request.volume().toVolume(place.member("volume"), 0.01, 10_000);
            long given = Stream.of(request.originalExtractPlato(), request.specificGravity(), request.malt())
                    .filter(value -> value != null)
                    .count();
            if (given != 1) {
                place.fault("must have one of originalExtractPlato, specificGravity and malt but has " + given);
                return Optional.empty();
            }
            WortDose wort;
            if (request.malt() != null) {
                Mass malt = request.malt().toMass(place.member("malt"), 1e-4, 10_000);
                wort = WortDose.ofMalt(volume, malt.kilograms(), beer);
            } else {
                double plato = request.originalExtractPlato() == null
                        ? WortDose.plato(requireNonNull(request.specificGravity()))
                        : request.originalExtractPlato();
                wort = place.build(() -> WortDose.ofExtract(volume, plato, beer), null);
            }
            if (wort != null && request.benchTitration() != null) {
                wort = titrated(wort, request.benchTitration(), dosed, place.member("benchTitration"));
            }
            if (wort != null) {
                findings.add(wort.finding(beer));
            }
            return Optional.ofNullable(wort);
        }

        private @Nullable WortDose titrated(
                WortDose wort, BenchTitrationRequest bench, Optional<AcidProduct> dosed, Place at) {
            double uncertainty = orElse(request.phUncertainty(), DoseChecks.usualUncertainty());
            Volume sample = bench.sample().toVolume(at.member("sample"), 0.001, 10);
            List<PastAddition> steps = history(bench.steps(), wort, dosed, uncertainty, at.member("steps"));
            if (steps.stream().noneMatch(step -> step.grams() > 0)
                    || steps.stream().noneMatch(step -> step.after().isPresent())) {
                at.member("steps").fault("must have at least one addition and one reading");
                return null;
            }
            return wort.titrated(
                    sample, new PhReading(bench.startPh(), uncertainty), orElse(request.sharedUncertainty(), 0), steps);
        }

        private double startPh(DosableLiquid known) {
            return request.measuredPh() == null ? ((LiquorDose) known).startPh() : request.measuredPh();
        }

        private List<PastAddition> history(
                @Nullable List<DoseEventRequest> events,
                DosableLiquid liquid,
                Optional<AcidProduct> dosed,
                double uncertainty,
                Place at) {
            List<PastAddition> history = new ArrayList<>();
            for (int i = 0; events != null && i < events.size(); i++) {
                event(events.get(i), liquid, dosed, uncertainty, at.item(i)).ifPresent(history::add);
            }
            return history;
        }

        private Optional<PastAddition> event(
                DoseEventRequest event,
                DosableLiquid liquid,
                Optional<AcidProduct> dosed,
                double uncertainty,
                Place item) {
            int given = (event.addedVolume() == null ? 0 : 1)
                    + (event.addedMass() == null ? 0 : 1)
                    + (event.ph() == null ? 0 : 1);
            if (given != 1) {
                item.fault("must have one of addedVolume, addedMass and ph but has " + given);
                return Optional.empty();
            }
            if (event.ph() != null) {
                PhReading reading = new PhReading(event.ph(), orElse(event.phUncertainty(), uncertainty));
                return Optional.of(PastAddition.read(reading));
            }
            if (event.phUncertainty() != null) {
                item.member("phUncertainty").fault("belongs to a pH that was read");
            }
            return event.base() != null ? baseAdded(event, liquid, item) : acidAdded(event, liquid, dosed, item);
        }

        private Optional<PastAddition> baseAdded(DoseEventRequest event, DosableLiquid liquid, Place item) {
            Optional<Bases.Base> base = base(event.base(), item.member("base"));
            if (event.acid() != null || event.strength() != null) {
                item.member("acid").fault("stands beside a base; give one of the two");
            }
            if (event.addedMass() == null) {
                item.member("addedVolume").fault("a base is weighed: give addedMass");
                return Optional.empty();
            }
            double grams = event.addedMass()
                    .toMass(item.member("addedMass"), 0, MOST_ADDED)
                    .grams();
            return base.map(known -> new PastAddition(
                    bases.computeIfAbsent(
                            known.salt(), salt -> liquid.base(salt, 1).reagent()),
                    grams,
                    Optional.empty()));
        }

        private Optional<PastAddition> acidAdded(
                DoseEventRequest event, DosableLiquid liquid, Optional<AcidProduct> dosed, Place item) {
            Optional<AcidProduct> added = event.acid() == null && event.strength() == null
                    ? dosed
                    : product(event.acid(), event.strength(), item);
            if (added.isEmpty()) {
                if (event.acid() == null && event.strength() == null) {
                    item.fault("names no acid or base, and the request names no acid either");
                }
                return Optional.empty();
            }
            AcidProduct product = added.get();
            if (event.addedVolume() != null && product.solid()) {
                item.member("addedVolume").fault("a powder is weighed: give addedMass");
                return Optional.empty();
            }
            double grams = event.addedMass() != null
                    ? event.addedMass()
                            .toMass(item.member("addedMass"), 0, MOST_ADDED)
                            .grams()
                    : requireNonNull(event.addedVolume())
                                    .toVolume(item.member("addedVolume"), 0, MOST_ADDED)
                                    .millilitres()
                            * product.densityGPerMl();
            Reagent reagent =
                    acids.computeIfAbsent(product, own -> liquid.acid(own, 1, 1).reagent());
            return Optional.of(new PastAddition(reagent, grams, Optional.empty()));
        }

        private static double orElse(@Nullable Double value, double fallback) {
            return value == null ? fallback : value;
        }
    }
}
