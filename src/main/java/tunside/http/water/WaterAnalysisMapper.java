package tunside.http.water;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.Acid;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Salt;
import tunside.finding.Finding;
import tunside.http.answer.Basis;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.problem.Place;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.http.quantity.ConductivityQuantity;
import tunside.http.quantity.HardnessQuantity;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.http.water.WaterAnalysisResponse.AnalysedSource;
import tunside.http.water.WaterAnalysisResponse.IonContent;
import tunside.http.water.WaterAnalysisResponse.PhEstimate;
import tunside.http.water.WaterAnalysisResponse.SlipSuspicion;
import tunside.http.water.WaterAnalysisResponse.TreatmentEffect;
import tunside.http.water.WaterAnalysisResponse.WaterAnalysisResult;
import tunside.http.water.WaterAnalysisResponse.WaterState;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;
import tunside.water.Boiling;
import tunside.water.Liming;
import tunside.water.PreparedLiquor;
import tunside.water.SuspectedSlip;
import tunside.water.Treatment;
import tunside.water.TreatmentStep;
import tunside.water.Water;
import tunside.water.WaterChecks;
import tunside.water.WaterProfile;
import tunside.water.WaterSlips;
import tunside.water.WaterSource;

/** Reads waters and treatments and answers with what they are. */
final class WaterAnalysisMapper {
    private static final List<String> ASSUMPTIONS = List.of(
            "1 kg of water is taken for 1 L; salts and acids do not change the volume.",
            "Ions, alkalinity and dissolved carbon mix linearly; pH does not and is solved anew.",
            "Activities by Davies' equation without ion pairs but those of weak acids; good to about 0.1 mol/L.",
            "Open means carbon dioxide of 417 ppm. In a kettle or a bucket a water lies between closed and open.",
            "Where the request states no uncertainty: alkalinity 5 % and 0.05 mEq/L, sample pH 0.1 (0.3 where it is not"
                    + " reported), calcium and magnesium 5 %, volumes 2 %, salts and acids 3 %; carried to first order.");

    private WaterAnalysisMapper() {}

    static WaterAnalysisResponse answer(WaterAnalysisRequest request) {
        Place place = Place.root();
        LiquorMapper.Reading reading =
                LiquorMapper.read(new LiquorRequest(null, null, request.sources(), request.treatments()), place);
        PreparedLiquor prepared = reading.prepared();
        Temperature temperature = request.temperature() == null
                ? prepared.blended().temperature()
                : request.temperature().toTemperature(place.member("temperature"), 0, 100);
        place.stopIfFaulty();
        List<Finding> findings = findings(reading);
        List<AcidProduct> products = TreatmentMapper.products(prepared.treatments());
        List<Salt> salts = TreatmentMapper.salts(prepared.treatments());
        return new WaterAnalysisResponse(
                toResult(prepared, temperature, findings),
                Checks.of(findings),
                Safety.water(products, salts),
                Basis.of("carbonate-equilibrium", assumptions(prepared), sources(prepared)));
    }

    /** Of each source in turn what its reading, then what its plausibility shows; then those of the treatments. */
    private static List<Finding> findings(LiquorMapper.Reading reading) {
        List<Finding> findings = new ArrayList<>();
        List<WaterSource> sources = reading.prepared().sources();
        for (int i = 0; i < sources.size(); i++) {
            String pointer = reading.waterPlaces().get(i).pointer();
            reading.prepared().waters().get(i).findings().forEach(finding -> findings.add(finding.under(pointer)));
            sources.get(i)
                    .report()
                    .map(WaterChecks::of)
                    .orElse(List.of())
                    .forEach(finding -> findings.add(finding.under(pointer)));
        }
        findings.addAll(reading.treatmentFindings());
        return findings;
    }

    private static WaterAnalysisResult toResult(
            PreparedLiquor prepared, Temperature temperature, List<Finding> findings) {
        PreparedLiquor untreated = PreparedLiquor.of(prepared.sources(), prepared.waters(), List.of());
        List<PreparedLiquor> varied = prepared.varied();
        List<PreparedLiquor> variedBlends = prepared.steps().isEmpty() ? varied : untreated.varied();
        WaterState treated = toState(prepared, varied, PreparedLiquor::treated, temperature);
        findings.add(WaterChecks.calcite(WaterProfile.of(prepared.treated(), temperature)));
        return new WaterAnalysisResult(
                prepared.sources().stream().map(WaterAnalysisMapper::toSource).toList(),
                VolumeQuantity.litres(prepared.volume().litres(), 3),
                toState(untreated, variedBlends, PreparedLiquor::blended, temperature),
                prepared.steps().stream()
                        .map(step -> toEffect(step, prepared.volume()))
                        .toList(),
                treated);
    }

    private static AnalysedSource toSource(WaterSource source) {
        PreparedLiquor alone = PreparedLiquor.of(List.of(source), List.of());
        Temperature temperature = alone.blended().temperature();
        return new AnalysedSource(
                source.name().isEmpty() ? null : source.name(),
                VolumeQuantity.litres(source.volume().litres(), 3),
                toState(alone, alone.varied(), PreparedLiquor::blended, temperature),
                source.report().map(WaterSlips::of).orElse(List.of()).stream()
                        .map(WaterAnalysisMapper::toSuspicion)
                        .toList());
    }

    private static SlipSuspicion toSuspicion(SuspectedSlip suspect) {
        return new SlipSuspicion(
                suspect.slip().id(),
                suspect.slip().meaning(),
                suspect.slip().advice(),
                Rounded.decimals(suspect.probability(), 2),
                Rounded.decimals(suspect.balanceBefore().percent(), 1),
                Rounded.decimals(suspect.balanceAfter().percent(), 1));
    }

    private static TreatmentEffect toEffect(TreatmentStep step, Volume volume) {
        WaterProfile profile = WaterProfile.of(step.water(), step.water().temperature());
        double depositGrams =
                step.calciumCarbonateMolPerKg() * volume.litres() * WaterProfile.CALCIUM_CARBONATE_G_PER_MOL;
        return new TreatmentEffect(
                step.kind(),
                step.subject().isEmpty() ? null : step.subject(),
                step.grams() > 0 ? MassQuantity.grams(step.grams(), 2) : null,
                depositGrams > 0.005 ? MassQuantity.grams(depositGrams, 2) : null,
                Rounded.decimals(profile.closedPh(), 2),
                AlkalinityQuantity.meqPerL(profile.alkalinityMeqPerL(), 3),
                Rounded.decimals(requireNonNull(profile.ions().get("Ca")).mgPerL(), 1));
    }

    private static WaterState toState(
            PreparedLiquor liquor,
            List<PreparedLiquor> varied,
            Function<PreparedLiquor, Water> which,
            Temperature temperature) {
        WaterProfile profile = WaterProfile.of(which.apply(liquor), temperature);
        List<WaterProfile> others = varied.stream()
                .map(other -> WaterProfile.of(which.apply(other), temperature))
                .toList();
        return new WaterState(
                TemperatureQuantity.celsius(temperature.celsius(), 1),
                new PhEstimate(
                        Rounded.decimals(profile.closedPh(), 2),
                        Rounded.decimals(profile.standardUncertainty(others, WaterProfile::closedPh), 2)),
                new PhEstimate(
                        Rounded.decimals(profile.openPh(), 2),
                        Rounded.decimals(profile.standardUncertainty(others, WaterProfile::openPh), 2)),
                toIons(profile),
                Rounded.decimals(profile.balance().cationsMeqPerL(), 3),
                Rounded.decimals(profile.balance().anionsMeqPerL(), 3),
                Rounded.decimals(profile.balance().percent(), 1),
                AlkalinityQuantity.meqPerL(profile.alkalinityMeqPerL(), 3),
                AlkalinityQuantity.meqPerL(profile.standardUncertainty(others, WaterProfile::alkalinityMeqPerL), 3),
                Rounded.decimals(profile.alkalinityMgPerLAsCaCO3(), 1),
                HardnessQuantity.meqPerL(profile.hardnessMeqPerL(), 3),
                Rounded.decimals(profile.hardnessMgPerLAsCaCO3(), 1),
                HardnessQuantity.meqPerL(profile.carbonateHardnessMeqPerL(), 3),
                HardnessQuantity.meqPerL(profile.nonCarbonateHardnessMeqPerL(), 3),
                AlkalinityQuantity.meqPerL(profile.residualAlkalinityMeqPerL(), 3),
                Rounded.decimals(profile.carbonMmolPerL(), 3),
                Rounded.decimals(profile.carbonDioxideMmolPerL(), 3),
                ConductivityQuantity.microsiemensPerCm(profile.conductivityMicrosiemensPerCm(), 2),
                Rounded.decimals(profile.dissolvedSolidsMgPerL(), 0),
                index(profile.calciteIndex()),
                index(profile.langelierIndex()),
                index(profile.gypsumIndex()));
    }

    private static @Nullable Double index(double value) {
        return value == Double.NEGATIVE_INFINITY ? null : Rounded.decimals(value, 2);
    }

    private static List<IonContent> toIons(WaterProfile profile) {
        List<IonContent> ions = new ArrayList<>();
        profile.ions()
                .forEach((symbol, amount) -> ions.add(new IonContent(
                        symbol, Rounded.decimals(amount.mgPerL(), 1), Rounded.decimals(amount.meqPerL(), 3))));
        profile.acidsMmolPerL().forEach((system, mmolPerL) -> {
            Acid acid = Acids.get(system.id());
            double charge = Math.abs(profile.meanCharge(system));
            ions.add(new IonContent(
                    acid.anion(),
                    Rounded.decimals(mmolPerL * acid.anionMolarMassGPerMol(), 1),
                    Rounded.decimals(mmolPerL * charge, 3)));
        });
        return ions;
    }

    private static List<String> assumptions(PreparedLiquor prepared) {
        List<String> assumptions = new ArrayList<>(ASSUMPTIONS);
        if (prepared.sources().stream().anyMatch(source -> source.share() < 1)) {
            assumptions.add("Reverse osmosis lets the same share of every ion through, and all free carbon dioxide.");
        }
        for (Treatment treatment : prepared.treatments()) {
            if (treatment instanceof Boiling) {
                assumptions.add("Boiling: the water is drawn off its deposit; what evaporates is not counted. Without a"
                        + " statement of yours it leaves 1 mEq/L, a rule of thumb, or what equilibrium leaves at 0.7.");
            }
            if (treatment instanceof Liming) {
                assumptions.add(
                        "Liming: pure calcium hydroxide, settled and drawn off; magnesium stays in solution. Without a"
                                + " statement of yours it leaves 0.7 mEq/L, a rule of thumb, or what equilibrium leaves at 0.3.");
            }
        }
        return assumptions.stream().distinct().toList();
    }

    private static List<String> sources(PreparedLiquor prepared) {
        Set<String> sources = new LinkedHashSet<>(List.of(
                "PLUMMER-BUSENBERG-1982",
                "PHREEQC-3",
                "DAVIES-1962",
                "KOLBACH-1953",
                "SM-1030E",
                "SM-2510",
                "ION-CONDUCTIVITIES",
                "LANGELIER-SHORT",
                "EPA-310-1",
                "EU-2020-2184",
                "US-40-CFR-143",
                "GUM-2008"));
        for (AcidProduct product : TreatmentMapper.products(prepared.treatments())) {
            sources.add("ROBINSON-STOKES");
            sources.add(product.densitySource());
        }
        if (!TreatmentMapper.salts(prepared.treatments()).isEmpty()) {
            sources.add("IUPAC-WEIGHTS");
            sources.add("SALT-SOLUBILITIES");
        }
        sources.add("COMMON-PRACTICE");
        sources.add("DERIVED");
        return List.copyOf(sources);
    }
}
