package tunside.dosing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How a dilution is made without getting hot.
 *
 * @param dilution what goes into what
 * @param conditions temperatures
 * @param warmth how well its heat is known
 * @param inOneGo what pouring all acid in one go would do, where that can be computed
 * @param stages pours to make, with cooling between them; one if all may go in at once, or once the water has cooled;
 *     empty where no heat is computed
 */
public record AcidDilutionPlan(
        AcidDilution dilution,
        AcidDilutionConditions conditions,
        AcidDilutionWarmth warmth,
        Optional<AcidDilutionStage> inOneGo,
        List<AcidDilutionStage> stages) {

    /** More pours than this are no plan. */
    private static final int MOST_STAGES = 60;

    public AcidDilutionPlan {
        stages = List.copyOf(stages);
    }

    /** Plans the pours. */
    public static AcidDilutionPlan of(AcidDilution dilution, AcidDilutionConditions conditions) {
        AcidDilutionWarmth warmth = AcidDilutionWarmth.of(dilution.strong().acid());
        Optional<AcidDilutionHeats> heats =
                AcidDilutionHeats.of(dilution.strong().acid());
        if (heats.isEmpty()) {
            return new AcidDilutionPlan(dilution, conditions, warmth, Optional.empty(), List.of());
        }
        AcidDilutionMixture water = AcidDilutionMixture.water(
                heats.get(), dilution.waterMass().grams(), conditions.water().celsius());
        AcidDilutionStage inOneGo = water.pouring(
                dilution.strong(),
                dilution.strongMass().grams(),
                conditions.acid().celsius());
        List<AcidDilutionStage> stages = inOneGo.surelyBelowCelsius() <= conditions.warmLimitCelsius()
                ? List.of(inOneGo)
                : stages(dilution, conditions, water);
        return new AcidDilutionPlan(dilution, conditions, warmth, Optional.of(inOneGo), stages);
    }

    /** Whether all acid in one go, into this water as it is, might get too warm: then the stages are to be kept. */
    public boolean staged() {
        return inOneGo.isPresent() && inOneGo.get().surelyBelowCelsius() > conditions.warmLimitCelsius();
    }

    /** Whether pouring all acid in one go could bring the mixture near boiling. */
    public boolean nearBoilingInOneGo() {
        return inOneGo.isPresent()
                && inOneGo.get().surelyBelowCelsius() >= AcidDilutionLimits.of("near_boiling_celsius");
    }

    private static List<AcidDilutionStage> stages(
            AcidDilution dilution, AcidDilutionConditions conditions, AcidDilutionMixture water) {
        double cooledTo = AcidDilutionLimits.cooledToCelsius();
        double acidCelsius = conditions.acid().celsius();
        List<AcidDilutionStage> stages = new ArrayList<>();
        AcidDilutionMixture mixture = water.cooledTo(cooledTo);
        double left = dilution.strongMass().grams();
        while (left > 0 && stages.size() < MOST_STAGES) {
            double pour = mixture.mostAcidGrams(dilution.strong(), left, acidCelsius, conditions.warmLimitCelsius());
            stages.add(mixture.pouring(dilution.strong(), pour, acidCelsius));
            mixture = mixture.with(dilution.strong(), pour, acidCelsius).cooledTo(cooledTo);
            left -= pour;
        }
        if (left > 0) {
            throw new IllegalStateException("acid is left over after %d stages".formatted(MOST_STAGES));
        }
        return stages;
    }
}
