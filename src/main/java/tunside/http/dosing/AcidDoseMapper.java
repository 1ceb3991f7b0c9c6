package tunside.http.dosing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tunside.chemistry.Acid;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.NeatAcidLimits;
import tunside.dosing.AcidDilution;
import tunside.dosing.ActingAcid;
import tunside.dosing.AnionTaste;
import tunside.dosing.Belief;
import tunside.dosing.BufferedLiquid;
import tunside.dosing.Contradictions;
import tunside.dosing.DoseEvent;
import tunside.dosing.DoseOutcome;
import tunside.dosing.DosePlan;
import tunside.dosing.DoseStage;
import tunside.dosing.DoseTarget;
import tunside.dosing.MeasuredMash;
import tunside.dosing.Titratable;
import tunside.dosing.TreatedWater;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.http.answer.Basis;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.dosing.AcidDoseResponse.AcidDose;
import tunside.http.dosing.AcidDoseResponse.AnionAdded;
import tunside.http.dosing.AcidDoseResponse.DilutionFirst;
import tunside.http.dosing.AcidDoseResponse.DosedAcid;
import tunside.http.dosing.AcidDoseResponse.LearntBuffering;
import tunside.http.dosing.AcidDoseResponse.PhBelief;
import tunside.http.dosing.AcidDoseResponse.Stage;
import tunside.http.dosing.AcidDoseResponse.TotalDose;
import tunside.http.mash.AdditionMapper;
import tunside.http.mash.GristMapper;
import tunside.http.problem.Place;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.http.water.LiquorMapper;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Mash;
import tunside.quantity.Mass;
import tunside.quantity.MassUnit;
import tunside.quantity.Strength;
import tunside.quantity.Temperature;
import tunside.quantity.VolumeUnit;

/** Reads a dose question and answers with what to add now. */
public final class AcidDoseMapper {
    private static final double USUAL_UNCERTAINTY = 0.05;
    private static final double USUAL_HALF_RANGE = 0.1;
    private static final double USUAL_RISK = 0.05;
    private static final double USUAL_STEP_ML = 0.5;
    private static final double USUAL_STEP_G = 0.1;
    private static final double HISTORY_TIMES_MOST = 10;
    private static final String UNEXPLAINED =
            "Add nothing yet: this grist and liquor do not explain the measured pH. Check meter, sample, grist and water,"
                    + " measure again, and ask again.";

    private AcidDoseMapper() {}

    /** The acid as bought and as dosed. */
    private record Stock(AcidProduct bought, ActingAcid dosed, boolean dilutedFirst) {
        static Stock of(AcidProduct bought) {
            boolean dilute = NeatAcidLimits.reachedBy(bought);
            AcidProduct dosed =
                    dilute ? AcidProduct.of(bought.acid(), Strength.percent(AcidDilution.DOSING_PERCENT)) : bought;
            return new Stock(bought, new ActingAcid(dosed), dilute);
        }

        MassQuantity mass(double millimoles) {
            return new MassQuantity(Rounded.significant(millimoles / dosed.mmolPerGram(), 3), MassUnit.G);
        }

        VolumeQuantity volume(double millimoles) {
            return dosed.product().solid()
                    ? null
                    : new VolumeQuantity(Rounded.significant(millimoles / dosed.mmolPerMl(), 3), VolumeUnit.ML);
        }
    }

    /** What is dosed, with what was found out about it. */
    private record Dosed(Titratable liquid, LiquorMapper.Liquor liquor, Optional<Mash> mash, List<Finding> findings) {}

    static AcidDoseResponse answer(AcidDoseRequest request) {
        Place place = Place.root();
        Optional<AcidProduct> bought = AdditionMapper.toProduct(
                request.acid(), request.strength().toStrength(place.member("strength")), place);
        double uncertainty = orElse(request.phUncertainty(), USUAL_UNCERTAINTY);
        DoseTarget target = toTarget(request, place);
        LiquorMapper.Liquor liquor = LiquorMapper.toLiquor(request.liquor(), place.member("liquor"));
        List<GristPart> parts = toParts(request, place);
        AdditionMapper.Additions additions = AdditionMapper.toAdditions(request.additions(), place.member("additions"));
        Temperature temperature = request.temperature() == null
                ? new Temperature(20)
                : request.temperature().toTemperature(place.member("temperature"), 0, 100);
        double stepMl = request.smallestStep() == null
                ? USUAL_STEP_ML
                : request.smallestStep()
                        .toVolume(place.member("smallestStep"), 1e-5, 1)
                        .millilitres();
        double stepGrams = request.smallestMass() == null
                ? USUAL_STEP_G
                : request.smallestMass()
                        .toMass(place.member("smallestMass"), 1e-5, 1)
                        .grams();
        if (bought.isEmpty()) {
            place.stopIfFaulty();
        }
        Stock stock = Stock.of(bought.orElseThrow());
        List<DoseEvent> history = toHistory(request, stock, uncertainty, place.member("history"));
        place.stopIfFaulty();

        Dosed dosed = request.liquid() == DosedLiquid.MASH
                ? mash(parts, liquor, additions, stock, place)
                : liquor(liquor, stock, temperature);
        double most = MeasuredMash.mostMillimoles(dosed.mash(), liquor.volume(), liquor.water());
        checkTotal(history, most, stock, place.member("history"));
        place.stopIfFaulty();
        Belief first = Belief.first(
                dosed.liquid(),
                new DoseEvent.Reading(request.measuredPh(), uncertainty),
                stock.dosed().relativeUncertainty());
        Belief now = first;
        for (DoseEvent event : history) {
            now = now.after(event);
        }
        double step = stock.dosed().product().solid()
                ? stepGrams * stock.dosed().mmolPerGram()
                : stepMl * stock.dosed().mmolPerMl();
        DoseOutcome outcome = DosePlan.of(now, target, step, most, uncertainty);

        List<Finding> findings = new ArrayList<>(dosed.findings());
        findings.add(stockFinding(stock));
        if (stock.bought().directShare() < 1) {
            findings.add(Finding.of(
                    "dose.lactic-oligomers",
                    Outcome.NOTE,
                    "/strength",
                    stock.bought().massPercent(),
                    100 * stock.bought().directShare()));
        }
        dosed.mash()
                .ifPresent(mash -> findings.add(MeasuredMash.against(mash, request.measuredPh(), uncertainty)
                        .under("/measuredPh")));
        Contradictions.of(first, history).forEach(finding -> findings.add(finding.under("/history")));
        AcidDose result = result(outcome, now, history, stock, dosed, findings);
        return new AcidDoseResponse(
                result,
                Checks.of(findings),
                Safety.dosing(stock.bought(), stock.dosed().product(), request.liquid() == DosedLiquid.MASH),
                basis(request.liquid(), stock));
    }

    private static DoseTarget toTarget(AcidDoseRequest request, Place place) {
        double target = request.targetPh();
        double low = orElse(request.lowPh(), target - USUAL_HALF_RANGE);
        double high = orElse(request.highPh(), target + USUAL_HALF_RANGE);
        return place.member("targetPh")
                .build(
                        () -> new DoseTarget(
                                Rounded.decimals(low, 6),
                                target,
                                Rounded.decimals(high, 6),
                                orElse(request.acceptedRisk(), USUAL_RISK)),
                        null);
    }

    private static List<GristPart> toParts(AcidDoseRequest request, Place place) {
        if (request.liquid() == DosedLiquid.MASH) {
            if (request.grist() == null) {
                place.member("grist").fault("is missing: a mash needs its grist");
                return List.of();
            }
            if (request.temperature() != null) {
                place.member("temperature").fault("belongs to a liquor; a mash sample is read cooled");
            }
            return GristMapper.toParts(request.grist(), place.member("grist"));
        }
        if (request.grist() != null) {
            place.member("grist").fault("belongs to a mash, but the liquid is a liquor");
        }
        if (request.additions() != null) {
            place.member("additions").fault("belongs to a mash, but the liquid is a liquor");
        }
        return List.of();
    }

    private static List<DoseEvent> toHistory(AcidDoseRequest request, Stock stock, double uncertainty, Place place) {
        List<DoseEvent> history = new ArrayList<>();
        if (request.history() == null) {
            return history;
        }
        for (int i = 0; i < request.history().size(); i++) {
            Place item = place.item(i);
            DoseEventRequest event = request.history().get(i);
            int given = (event.addedVolume() == null ? 0 : 1)
                    + (event.addedMass() == null ? 0 : 1)
                    + (event.ph() == null ? 0 : 1);
            if (given != 1) {
                item.fault("must have one of addedVolume, addedMass and ph but has " + given);
            } else if (event.ph() != null) {
                history.add(new DoseEvent.Reading(event.ph(), uncertainty));
            } else if (event.addedMass() != null) {
                Mass mass = event.addedMass().toMass(item.member("addedMass"), 0, 100);
                history.add(new DoseEvent.Added(mass.grams() * stock.dosed().mmolPerGram()));
            } else if (stock.dosed().product().solid()) {
                item.member("addedVolume").fault("a powder is weighed: give addedMass");
            } else {
                double millilitres = event.addedVolume()
                        .toVolume(item.member("addedVolume"), 0, 100)
                        .millilitres();
                history.add(new DoseEvent.Added(millilitres * stock.dosed().mmolPerMl()));
            }
        }
        return history;
    }

    /** A history with many times the acid that makes sense is a wrong unit or a wrong volume. */
    private static void checkTotal(List<DoseEvent> history, double most, Stock stock, Place place) {
        double added = 0;
        for (DoseEvent event : history) {
            added += event instanceof DoseEvent.Added acid ? acid.millimoles() : 0;
        }
        if (added > HISTORY_TIMES_MOST * most) {
            place.fault("must not add more than %s g of this acid in all, for this liquor and grist, but adds %s g"
                    .formatted(
                            Rounded.text(stock.mass(HISTORY_TIMES_MOST * most).value()),
                            Rounded.text(stock.mass(added).value())));
        }
    }

    private static Dosed mash(
            List<GristPart> parts,
            LiquorMapper.Liquor liquor,
            AdditionMapper.Additions additions,
            Stock stock,
            Place place) {
        Mash mash = Mash.of(GristMapper.toGrist(parts), Liquor.of(liquor.volume(), liquor.water()))
                .withAdditions(additions.additions());
        List<Finding> findings = new ArrayList<>(GristMapper.findings(parts, place.member("grist")));
        findings.addAll(liquor.water().findings());
        findings.addAll(additions.findings());
        return new Dosed(
                BufferedLiquid.mash(mash, stock.bought().acid().system()), liquor, Optional.of(mash), findings);
    }

    private static Dosed liquor(LiquorMapper.Liquor liquor, Stock stock, Temperature temperature) {
        TreatedWater water = new TreatedWater(
                liquor.water(), liquor.volume(), temperature, stock.bought().acid(), TreatedWater.ALKALINITY_LOG_SD);
        return new Dosed(
                water, liquor, Optional.empty(), new ArrayList<>(liquor.water().findings()));
    }

    private static Finding stockFinding(Stock stock) {
        return (stock.dilutedFirst()
                        ? Finding.of(
                                "dose.dilute-first",
                                Outcome.STOP,
                                "/strength",
                                stock.bought().massPercent(),
                                AcidDilution.DOSING_PERCENT)
                        : Finding.of(
                                "dose.strength",
                                Outcome.PASS,
                                "/strength",
                                stock.bought().massPercent(),
                                100))
                .about(stock.bought().acid().name());
    }

    private static AcidDose result(
            DoseOutcome outcome,
            Belief now,
            List<DoseEvent> history,
            Stock stock,
            Dosed dosed,
            List<Finding> findings) {
        PhBelief belief = new PhBelief(Rounded.decimals(now.ph(), 2), Rounded.decimals(now.standardUncertainty(), 3));
        DosedAcid acid = new DosedAcid(
                stock.bought().acid().id(),
                StrengthQuantity.percent(stock.dosed().product().massPercent(), 2),
                Rounded.decimals(stock.dosed().product().densityGPerMl(), 3),
                Rounded.significant(stock.dosed().mmolPerGram(), 3));
        LearntBuffering learnt = history.isEmpty() ? null : learnt(now, dosed);
        if (outcome instanceof DoseOutcome.Dose dose) {
            boolean unexplained = findings.stream()
                    .anyMatch(finding ->
                            finding.code().equals("dose.measured-against-grist") && finding.outcome() == Outcome.STOP);
            List<Stage> stages = unexplained
                    ? List.of()
                    : dose.stages().stream().map(stage -> stage(stage, stock)).toList();
            if (stages.isEmpty() && !unexplained) {
                findings.add(Finding.of("dose.smallest-step", Outcome.CAUTION, "/smallestStep"));
            }
            if (history.isEmpty() && dosed.mash().isPresent()) {
                findings.add(Finding.of("dose.buffering-prior", Outcome.NOTE, "", 1.6, 1.6));
            }
            if (dosed.liquid() instanceof TreatedWater water) {
                findings.add(openFinding(water, dose));
            }
            return new AcidDose(
                    DoseResult.DOSE,
                    unexplained ? UNEXPLAINED : advice(stages, stock),
                    belief,
                    acid,
                    unexplained ? null : dilution(stock, dose),
                    unexplained ? null : total(dose, stock),
                    stages.isEmpty() ? null : stages.get(0),
                    stages,
                    learnt,
                    anion(now.millimoles() + dose.millimoles(), stock, dosed, findings));
        }
        if (outcome instanceof DoseOutcome.NoneNeeded) {
            return bare(DoseResult.NONE_NEEDED, "The pH is in the range. Add nothing.", belief, acid, learnt);
        }
        if (outcome instanceof DoseOutcome.RaiseInstead) {
            return bare(
                    DoseResult.RAISE_INSTEAD,
                    "The pH is below the range. Add no acid; it would have to be raised, or left as it is.",
                    belief,
                    acid,
                    learnt);
        }
        DoseOutcome.OutOfReach out = (DoseOutcome.OutOfReach) outcome;
        return bare(
                DoseResult.OUT_OF_REACH,
                "This acid does not reach the target: with the most that makes sense the pH would be %s. Check the input."
                        .formatted(Rounded.text(Rounded.decimals(out.phAtLargest(), 2))),
                belief,
                acid,
                learnt);
    }

    private static AcidDose bare(
            DoseResult outcome, String advice, PhBelief belief, DosedAcid acid, LearntBuffering learnt) {
        return new AcidDose(outcome, advice, belief, acid, null, null, null, List.of(), learnt, null);
    }

    private static String advice(List<Stage> stages, Stock stock) {
        if (stages.isEmpty()) {
            return "Not even one step of your syringe or scales is safe to add. Dilute the acid or use a finer syringe.";
        }
        Stage stage = stages.get(0);
        String amount = stage.volume() == null
                ? Rounded.text(stage.mass().value()) + " g"
                : Rounded.text(stage.volume().value()) + " mL";
        return "%sAdd %s of %s, %s %%w/w, now. Stir well, wait, cool a sample, measure, and ask again with what you read."
                .formatted(
                        stock.dilutedFirst() ? "Dilute the acid first, acid into water. " : "",
                        amount,
                        stock.bought().acid().name(),
                        Rounded.text(Rounded.decimals(stock.dosed().product().massPercent(), 1)));
    }

    private static DilutionFirst dilution(Stock stock, DoseOutcome.Dose dose) {
        if (!stock.dilutedFirst()) {
            return null;
        }
        double grams = Math.ceil(dose.highMillimoles() / stock.dosed().mmolPerGram() / 10) * 10;
        AcidDilution dilution = AcidDilution.of(stock.bought(), AcidDilution.DOSING_PERCENT, new Mass(grams / 1000));
        return new DilutionFirst(
                MassQuantity.grams(dilution.waterMass().grams(), 1),
                MassQuantity.grams(dilution.strongMass().grams(), 1),
                VolumeQuantity.millilitres(dilution.strongMillilitres(), 1),
                VolumeQuantity.millilitres(dilution.weakMillilitres(), 0),
                StrengthQuantity.percent(AcidDilution.DOSING_PERCENT, 1));
    }

    private static TotalDose total(DoseOutcome.Dose dose, Stock stock) {
        return new TotalDose(
                stock.volume(dose.millimoles()),
                stock.mass(dose.millimoles()),
                stock.mass(dose.lowMillimoles()),
                stock.mass(dose.highMillimoles()));
    }

    private static Stage stage(DoseStage stage, Stock stock) {
        return new Stage(
                stock.volume(stage.millimoles()),
                stock.mass(stage.millimoles()),
                Rounded.decimals(stage.expectedPh(), 2),
                Rounded.decimals(stage.lowPh(), 2),
                Rounded.decimals(stage.highPh(), 2),
                Rounded.decimals(stage.overshootProbability(), 3));
    }

    private static LearntBuffering learnt(Belief now, Dosed dosed) {
        double spread = Math.exp(1.6449 * now.logScaleSd());
        return new LearntBuffering(
                Rounded.decimals(now.scale(), 2),
                Rounded.decimals(now.scale() / spread, 2),
                Rounded.decimals(now.scale() * spread, 2),
                dosed.mash()
                        .map(mash -> Rounded.significant(mash.balance().bufferingMeqPerPh(now.ph()), 3))
                        .orElse(null));
    }

    private static AnionAdded anion(double millimoles, Stock stock, Dosed dosed, List<Finding> findings) {
        Acid acid = stock.bought().acid();
        double mgPerL = millimoles
                * acid.anionMolarMassGPerMol()
                / dosed.liquor().volume().litres();
        Optional<AnionTaste.Threshold> threshold = AnionTaste.of(acid.anion());
        findings.add((threshold.isEmpty()
                        ? Finding.of("dose.taste", Outcome.NOTE, "/acid", mgPerL, mgPerL)
                        : Finding.of(
                                "dose.taste",
                                mgPerL <= threshold.get().mgPerL() ? Outcome.PASS : Outcome.CAUTION,
                                "/acid",
                                mgPerL,
                                threshold.get().mgPerL()))
                .about(acid.anion()));
        return new AnionAdded(
                acid.anion(),
                Rounded.significant(mgPerL, 3),
                threshold.map(AnionTaste.Threshold::mgPerL).orElse(null));
    }

    private static Finding openFinding(TreatedWater water, DoseOutcome.Dose dose) {
        double ph = water.openPhAfter(dose.millimoles());
        return Finding.of("dose.closed", Outcome.NOTE, "/liquor", Rounded.decimals(ph, 1), ph);
    }

    private static Basis basis(DosedLiquid liquid, Stock stock) {
        List<String> assumptions = new ArrayList<>();
        List<String> sources = new ArrayList<>();
        if (liquid == DosedLiquid.MASH) {
            assumptions.add(
                    "The buffering of malt is known before the first addition only within a factor of 1.6 (90 %);"
                            + " the published figures spread that far. Each measured addition narrows it.");
            assumptions.add("The proton balance of the mash, anchored at the measured pH of a cooled sample.");
            sources.addAll(List.of("TROESTER-2009", "DELANGE-2015", "KOLBACH-1953", "DERIVED"));
        } else {
            assumptions.add("A closed vessel: no carbon dioxide escapes before the pH is read.");
            assumptions.add("Alkalinity of the report is good to 5 %.");
            assumptions.add("Davies activities; complexes of calcium and magnesium with citrate and phosphate.");
            sources.addAll(List.of("PLUMMER-BUSENBERG-1982", "DAVIES-1962", "NIST-46", "PHREEQC-3"));
        }
        assumptions.add("Label and syringe are good to 3 % together (common practice).");
        assumptions.add("Later stages hold if every reading comes as expected; ask again after each.");
        sources.addAll(List.of("ROBINSON-STOKES", stock.dosed().product().densitySource(), "COMMON-PRACTICE"));
        return Basis.of(
                "staged-acid-dose", assumptions, sources.stream().distinct().toList());
    }

    private static double orElse(Double value, double fallback) {
        return value == null ? fallback : value;
    }
}
