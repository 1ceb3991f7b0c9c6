package tunside.http.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.NeatAcidLimits;
import tunside.chemistry.Salt;
import tunside.chemistry.Salts;
import tunside.dosing.AcidDilution;
import tunside.dosing.AnionTaste;
import tunside.dosing.Bases;
import tunside.dosing.DoseChecks;
import tunside.finding.Finding;
import tunside.http.answer.Rounded;
import tunside.http.json.KnownIds;
import tunside.http.mash.AdditionMapper;
import tunside.http.mash.MashPredictionMapper;
import tunside.http.mash.MashPredictionRequest;
import tunside.http.plan.MashPlanRequest.AcidAtHandRequest;
import tunside.http.plan.MashPlanRequest.AcidulatedMaltRequest;
import tunside.http.plan.MashPlanRequest.AlkalinityRangeRequest;
import tunside.http.plan.MashPlanRequest.AtHandRequest;
import tunside.http.plan.MashPlanRequest.DilutingWaterRequest;
import tunside.http.plan.MashPlanRequest.IonRangeRequest;
import tunside.http.plan.MashPlanRequest.IonRangesRequest;
import tunside.http.plan.MashPlanRequest.PlanStepsRequest;
import tunside.http.plan.MashPlanRequest.RatioRangeRequest;
import tunside.http.problem.Place;
import tunside.http.quantity.DissolvedQuantity;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.http.water.LiquorMapper;
import tunside.http.water.LiquorRequest;
import tunside.mash.Estimate;
import tunside.mash.Grist;
import tunside.mash.Malt;
import tunside.mash.MaltClasses;
import tunside.mash.Mash;
import tunside.mash.MashModel;
import tunside.mash.MeasuredMalt;
import tunside.mash.plan.IonWant;
import tunside.mash.plan.PhAim;
import tunside.mash.plan.PlanChecks;
import tunside.mash.plan.PlanDefaults;
import tunside.mash.plan.PlanQuestion;
import tunside.mash.plan.PlanSupply;
import tunside.quantity.DissolvedUnit;
import tunside.quantity.Strength;
import tunside.quantity.VolumeUnit;
import tunside.water.Water;

/**
 * A plan question as read.
 *
 * @param question for the science
 * @param prediction the same as a question for a prediction
 * @param bought acids as bought, by the pointer of their supply
 * @param findings about what was read
 */
record MashPlanReading(
        PlanQuestion question,
        MashPredictionMapper.Question prediction,
        Map<String, AcidProduct> bought,
        List<Finding> findings) {
    private static final double USUAL_HALF_RANGE = 0.1;
    private static final double USUAL_SCALE_G = 0.1;
    private static final double USUAL_SYRINGE_ML = 0.5;
    private static final double USUAL_MALT_SCALE_KG = 0.01;
    private static final double USUAL_JUG_L = 0.5;
    private static final double MOST_KG = 1000;
    private static final double MOST_L = 1000;
    private static final String ACIDULATED = "acidulated";

    /** Reads the whole question; throws with all faults if there are any. */
    static MashPlanReading of(MashPlanRequest request) {
        return new Reader(request).read();
    }

    /** A supply whose limit waits for the mash. */
    @FunctionalInterface
    private interface Sized {
        PlanSupply in(Mash mash);
    }

    /** Steps in the measures of the supplies. */
    private record Steps(double scaleG, double syringeMl, double maltScaleKg, double jugL) {}

    private static final class Reader {
        private final MashPlanRequest request;
        private final Place place = Place.root();
        private final List<Finding> findings = new ArrayList<>();
        private final Map<String, AcidProduct> bought = new LinkedHashMap<>();
        private final List<Sized> supplies = new ArrayList<>();

        Reader(MashPlanRequest request) {
            this.request = request;
        }

        MashPlanReading read() {
            Optional<PhAim> aim = aim();
            Steps steps = steps(place.member("steps"));
            atHand(request.atHand(), steps, place.member("atHand"));
            List<IonWant> wants = wants(request.ions(), place.member("ions"));
            double lactate = lactate(place.member("mostLactate"));
            MashPredictionMapper.Question prediction = MashPredictionMapper.toQuestion(
                    new MashPredictionRequest(
                            request.grist(),
                            request.liquor(),
                            request.additions(),
                            request.millGapMm(),
                            request.rest(),
                            request.decoction(),
                            request.experience(),
                            null,
                            null),
                    place);
            Mash mash = prediction.mash();
            if (request.atHand().acidulatedMalt() != null
                    && mash.grist().parts().size() >= Grist.MOST_MALTS) {
                place.member("grist")
                        .fault("must have at most %s different malts where acidulated malt is at hand, but has %s"
                                .formatted(
                                        Grist.MOST_MALTS - 1,
                                        mash.grist().parts().size()));
            }
            place.stopIfFaulty();
            Water water = LiquorMapper.toLiquor(request.liquor(), place.member("liquor"))
                    .water();
            return new MashPlanReading(
                    new PlanQuestion(
                            mash,
                            water,
                            aim.orElseThrow(),
                            supplies.stream().map(sized -> sized.in(mash)).toList(),
                            wants,
                            lactate),
                    prediction,
                    bought,
                    findings);
        }

        private Optional<PhAim> aim() {
            double target = request.targetPh();
            double low = request.lowPh() == null ? Rounded.decimals(target - USUAL_HALF_RANGE, 6) : request.lowPh();
            double high = request.highPh() == null ? Rounded.decimals(target + USUAL_HALF_RANGE, 6) : request.highPh();
            if (!(low < high)) {
                place.member("lowPh").fault("must be below highPh (%s) but is %s".formatted(high, low));
                return Optional.empty();
            }
            Optional<PhAim> aim =
                    Optional.ofNullable(place.member("targetPh").build(() -> new PhAim(target, low, high), null));
            aim.ifPresent(
                    read -> findings.addAll(PlanChecks.of(read, request.lowPh() != null && request.highPh() != null)));
            return aim;
        }

        private Steps steps(Place at) {
            PlanStepsRequest steps =
                    request.steps() == null ? new PlanStepsRequest(null, null, null, null) : request.steps();
            return new Steps(
                    steps.scale() == null
                            ? USUAL_SCALE_G
                            : steps.scale().toMass(at.member("scale"), 1e-6, 1).grams(),
                    steps.syringe() == null
                            ? USUAL_SYRINGE_ML
                            : steps.syringe()
                                    .toVolume(at.member("syringe"), 1e-6, 1)
                                    .millilitres(),
                    steps.maltScale() == null
                            ? USUAL_MALT_SCALE_KG
                            : steps.maltScale()
                                    .toMass(at.member("maltScale"), 1e-4, 10)
                                    .kilograms(),
                    steps.jug() == null
                            ? USUAL_JUG_L
                            : steps.jug().toVolume(at.member("jug"), 1e-3, 100).litres());
        }

        private void atHand(AtHandRequest atHand, Steps steps, Place at) {
            if (isEmpty(atHand.acids())
                    && isEmpty(atHand.bases())
                    && isEmpty(atHand.salts())
                    && atHand.acidulatedMalt() == null
                    && atHand.dilutingWater() == null) {
                at.fault("is empty; name at least one acid, base, salt, acidulatedMalt or dilutingWater");
                return;
            }
            each(atHand.acids(), at.member("acids"), (acid, item) -> acid(acid, steps, item));
            if (atHand.acidulatedMalt() != null) {
                acidulated(atHand.acidulatedMalt(), steps.maltScaleKg(), at.member("acidulatedMalt"));
            }
            each(atHand.bases(), at.member("bases"), (base, item) -> {
                Optional<Salt> salt = Bases.find(base.base()).map(Bases.Base::salt);
                if (salt.isEmpty()) {
                    item.member("base").fault(KnownIds.BASE.fault(base.base()));
                }
                salt(salt, base.most(), steps.scaleG(), item);
            });
            each(atHand.salts(), at.member("salts"), (one, item) -> {
                Optional<Salt> salt = Salts.find(one.salt());
                if (salt.isEmpty()) {
                    item.member("salt").fault(KnownIds.SALT.fault(one.salt()));
                } else if (PlanSupply.OfSalt.isBase(salt.get())) {
                    item.member("salt").fault("%s raises the pH; list it under bases".formatted(one.salt()));
                }
                salt(salt, one.most(), steps.scaleG(), item);
            });
            if (atHand.dilutingWater() != null) {
                water(atHand.dilutingWater(), steps.jugL(), at.member("dilutingWater"));
            }
        }

        private static boolean isEmpty(@Nullable List<?> list) {
            return list == null || list.isEmpty();
        }

        /** What to do with an item and its place. */
        @FunctionalInterface
        private interface Item<T> {
            void read(T item, Place place);
        }

        private static <T> void each(@Nullable List<T> list, Place at, Item<T> item) {
            for (int i = 0; list != null && i < list.size(); i++) {
                item.read(list.get(i), at.item(i));
            }
        }

        private void acid(AcidAtHandRequest acid, Steps steps, Place item) {
            Optional<AcidProduct> product =
                    AdditionMapper.toProduct(acid.acid(), acid.strength().toStrength(item.member("strength")), item);
            OptionalDouble boughtGrams =
                    product.isPresent() ? boughtGrams(acid, product.get(), item) : OptionalDouble.empty();
            if (product.isEmpty()) {
                return;
            }
            AcidProduct own = product.get();
            AcidProduct dosed = NeatAcidLimits.reachedBy(own)
                    ? AcidProduct.of(own.acid(), Strength.percent(AcidDilution.DOSING_PERCENT))
                    : own;
            bought.put(item.pointer(), own);
            DoseChecks.product(own).forEach(finding -> findings.add(finding.under(item.pointer())));
            double step = dosed.solid() ? steps.scaleG() : steps.syringeMl();
            boolean stated = boughtGrams.isPresent();
            supplies.add(mash -> {
                double grams = boughtGrams.orElse(0) * own.massPercent() / dosed.massPercent();
                double most = stated
                        ? (dosed.solid() ? grams : grams / dosed.densityGPerMl())
                        : PlanDefaults.most(dosed, mash.liquor().volume().litres());
                return noted(new PlanSupply.OfAcid(item.pointer(), dosed, step, most), stated);
            });
        }

        private PlanSupply noted(PlanSupply supply, boolean stated) {
            findings.add(PlanChecks.most(supply, stated));
            return supply;
        }

        private static OptionalDouble boughtGrams(AcidAtHandRequest acid, AcidProduct product, Place item) {
            if (acid.most() != null && acid.mostMass() != null) {
                item.member("mostMass").fault("stands beside most; give one of the two");
                return OptionalDouble.empty();
            }
            if (acid.mostMass() != null) {
                return OptionalDouble.of(acid.mostMass()
                        .toMass(item.member("mostMass"), 0, MOST_KG)
                        .grams());
            }
            if (acid.most() == null) {
                return OptionalDouble.empty();
            }
            if (product.solid()) {
                item.member("most").fault("is a volume, but a powder is weighed: give mostMass");
                return OptionalDouble.empty();
            }
            VolumeQuantity most = acid.most();
            return OptionalDouble.of(
                    most.toVolume(item.member("most"), 0, MOST_L).millilitres() * product.densityGPerMl());
        }

        private void acidulated(AcidulatedMaltRequest request, double step, Place item) {
            Optional<Estimate> lactic = Optional.ofNullable(request.lacticAcidPercent())
                    .map(percent -> new Estimate(
                            percent, MashModel.standard().handling().labelledLacticAcidPercent()));
            Malt malt = new Malt(
                    MaltClasses.get(ACIDULATED), Optional.empty(), MeasuredMalt.NOTHING, lactic, Optional.empty());
            Double percent = request.mostPercent();
            boolean stated = percent != null;
            double share = percent == null ? PlanDefaults.mostAcidulatedShare() : percent / 100;
            supplies.add(mash -> noted(
                    new PlanSupply.OfMalt(
                            item.pointer(),
                            malt,
                            step,
                            PlanSupply.OfMalt.mostKilograms(
                                    mash.grist().kilograms(), PlanQuestion.acidulatedKilograms(mash.grist()), share)),
                    stated));
        }

        private void salt(Optional<Salt> salt, @Nullable MassQuantity most, double step, Place item) {
            boolean stated = most != null;
            double grams = most == null
                    ? 0
                    : most.toMass(item.member("most"), 0, MOST_KG).grams();
            salt.ifPresent(known -> supplies.add(mash -> noted(
                    new PlanSupply.OfSalt(
                            item.pointer(),
                            known,
                            step,
                            stated
                                    ? grams
                                    : PlanDefaults.most(
                                            known, mash.liquor().volume().litres())),
                    stated)));
        }

        private void water(DilutingWaterRequest request, double step, Place item) {
            Water water = LiquorMapper.toLiquor(
                            new LiquorRequest(new VolumeQuantity(1.0, VolumeUnit.L), request.water(), null, null), item)
                    .water();
            findings.addAll(water.findings());
            Double percent = request.mostPercent();
            boolean stated = percent != null;
            double share = percent == null ? PlanDefaults.mostDilutionShare() : percent / 100;
            supplies.add(mash -> noted(
                    new PlanSupply.OfWater(
                            item.pointer(),
                            water,
                            step,
                            share * mash.liquor().volume().litres()),
                    stated));
        }

        private double lactate(Place at) {
            if (request.mostLactate() != null) {
                if (request.mostLactate().unit() == DissolvedUnit.MG_PER_L_AS_S
                        || request.mostLactate().unit() == DissolvedUnit.MG_PER_L_AS_N) {
                    at.member("unit").fault("must be mg/L, mmol/L or mEq/L for lactate");
                    return 0;
                }
                double molarMass = Acids.get("lactic").anionMolarMassGPerMol();
                return request.mostLactate().toDissolved().mmolPerL(molarMass, 1) * molarMass;
            }
            return AnionTaste.of(Acids.get("lactic"), 0, 1).thresholdMgPerL().orElseThrow();
        }

        private List<IonWant> wants(@Nullable IonRangesRequest ions, Place at) {
            List<IonWant> wants = new ArrayList<>();
            if (ions == null) {
                return wants;
            }
            ion(Ion.CALCIUM, ions.calcium(), at.member("calcium"), wants);
            ion(Ion.MAGNESIUM, ions.magnesium(), at.member("magnesium"), wants);
            ion(Ion.SODIUM, ions.sodium(), at.member("sodium"), wants);
            ion(Ion.POTASSIUM, ions.potassium(), at.member("potassium"), wants);
            ion(Ion.CHLORIDE, ions.chloride(), at.member("chloride"), wants);
            ion(Ion.SULFATE, ions.sulfate(), at.member("sulfate"), wants);
            AlkalinityRangeRequest alkalinity = ions.alkalinity();
            if (alkalinity != null) {
                Place item = at.member("alkalinity");
                OptionalDouble low = alkalinity.low() == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(alkalinity
                                .low()
                                .toAlkalinity(item.member("low"), 0, 50)
                                .meqPerL());
                OptionalDouble high = alkalinity.high() == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(alkalinity
                                .high()
                                .toAlkalinity(item.member("high"), 0, 50)
                                .meqPerL());
                want(IonWant.Kind.ALKALINITY, Optional.empty(), low, high, item, wants);
            }
            RatioRangeRequest ratio = ions.chlorideToSulfate();
            if (ratio != null) {
                want(
                        IonWant.Kind.CHLORIDE_TO_SULFATE,
                        Optional.empty(),
                        optional(ratio.low()),
                        optional(ratio.high()),
                        at.member("chlorideToSulfate"),
                        wants);
            }
            return wants;
        }

        private static OptionalDouble optional(@Nullable Double value) {
            return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
        }

        private static void ion(Ion ion, @Nullable IonRangeRequest range, Place item, List<IonWant> wants) {
            if (range != null) {
                want(
                        IonWant.Kind.ION,
                        Optional.of(ion),
                        mgPerL(ion, range.low(), item.member("low")),
                        mgPerL(ion, range.high(), item.member("high")),
                        item,
                        wants);
            }
        }

        private static OptionalDouble mgPerL(Ion ion, @Nullable DissolvedQuantity quantity, Place item) {
            if (quantity == null) {
                return OptionalDouble.empty();
            }
            if ((quantity.unit() == DissolvedUnit.MG_PER_L_AS_S && ion != Ion.SULFATE)
                    || quantity.unit() == DissolvedUnit.MG_PER_L_AS_N) {
                item.member("unit").fault("must be mg/L, mmol/L or mEq/L for this ion; mg/L-as-S is for sulfate");
                return OptionalDouble.empty();
            }
            double molarMass = ion.molarMassGPerMol();
            double mmolPerL = quantity.toDissolved().mmolPerL(molarMass, ion.charge());
            return OptionalDouble.of(molarMass * item.within(mmolPerL, 0, 200, "mmol/L", () -> mmolPerL + " mmol/L"));
        }

        private static void want(
                IonWant.Kind kind,
                Optional<Ion> ion,
                OptionalDouble low,
                OptionalDouble high,
                Place item,
                List<IonWant> wants) {
            item.build(() -> wants.add(new IonWant(kind, ion, low, high, item.pointer())), false);
        }
    }
}
