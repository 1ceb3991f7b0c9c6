package tunside.water;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tunside.chemistry.Ion;
import tunside.chemistry.IonAmounts;
import tunside.quantity.Alkalinity;
import tunside.quantity.Conductivity;
import tunside.quantity.DissolvedUnit;
import tunside.quantity.EquivalentUnit;
import tunside.quantity.Hardness;
import tunside.quantity.Temperature;

/**
 * A water as its laboratory reports it. What is not reported is absent, not zero.
 *
 * @param mmolPerL ions reported, mmol/L, not negative
 * @param ionUnits the unit that each was printed in, for those that a slip may hide in
 * @param alkalinity titrated, or bicarbonate taken for it
 * @param alkalinityUnit the unit that it was printed in
 * @param carbonateIons bicarbonate and carbonate listed as ions; where an alkalinity stands too, that one is used
 * @param endPointPh where the titration ended, 3.5 to 5.5; absent: assumed
 * @param ph of the sample, 4 to 11; absent: assumed
 * @param temperature of the sample when its pH was read, 0 to 60 degC
 * @param hardness total hardness
 * @param conductivity at 25 degC
 * @param dissolvedSolidsMgPerL total dissolved solids, mg/L
 */
public record WaterReport(
        Map<Ion, Double> mmolPerL,
        Map<Ion, DissolvedUnit> ionUnits,
        Optional<Alkalinity> alkalinity,
        Optional<EquivalentUnit> alkalinityUnit,
        Optional<CarbonateIons> carbonateIons,
        OptionalDouble endPointPh,
        OptionalDouble ph,
        Temperature temperature,
        Optional<Hardness> hardness,
        Optional<Conductivity> conductivity,
        OptionalDouble dissolvedSolidsMgPerL) {
    private static final double MOST_MMOL_PER_L = 5000;

    public WaterReport {
        mmolPerL = IonAmounts.of(mmolPerL);
        ionUnits = Map.copyOf(ionUnits);
        for (Ion ion : Ion.ALL) {
            requireAmount(ion, IonAmounts.amount(mmolPerL, ion));
        }
        endPointPh.ifPresent(value -> require("end point pH", value, 3.5, 5.5));
        ph.ifPresent(value -> require("pH of the water", value, 4, 11));
        require("temperature of the water (degC)", temperature.celsius(), 0, 60);
        dissolvedSolidsMgPerL.ifPresent(value -> require("total dissolved solids (mg/L)", value, 0, 100_000));
    }

    /** Ions, an alkalinity and a pH alone. */
    public WaterReport(
            Map<Ion, Double> mmolPerL,
            Optional<Alkalinity> alkalinity,
            OptionalDouble endPointPh,
            OptionalDouble ph,
            Temperature temperature) {
        this(
                mmolPerL,
                Map.of(),
                alkalinity,
                Optional.empty(),
                Optional.empty(),
                endPointPh,
                ph,
                temperature,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty());
    }

    private static void requireAmount(Ion ion, double mmolPerL) {
        if (!(mmolPerL >= 0 && mmolPerL <= MOST_MMOL_PER_L)) {
            require(ion.symbol() + " (mmol/L)", mmolPerL, 0, MOST_MMOL_PER_L);
        }
    }

    static void require(String what, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException("%s must be from %s to %s but is %s".formatted(what, low, high, value));
        }
    }

    /** The alkalinity that the report states, or that its bicarbonate and carbonate make up, mEq/L. */
    public OptionalDouble alkalinityMeqPerL() {
        if (alkalinity.isPresent()) {
            return OptionalDouble.of(alkalinity.get().meqPerL());
        }
        return carbonateIons.isPresent()
                ? OptionalDouble.of(carbonateIons.get().alkalinityMeqPerL(statedPh(), temperature, ionicStrength()))
                : OptionalDouble.empty();
    }

    /** The pH of the report; else that of its bicarbonate beside its carbonate; else the usual one. */
    double statedPh() {
        if (ph.isPresent()) {
            return ph.getAsDouble();
        }
        OptionalDouble ofIons = carbonateIons.isPresent()
                ? carbonateIons.get().ph(temperature, ionicStrength())
                : OptionalDouble.empty();
        return ofIons.isPresent() ? Math.max(4, Math.min(11, ofIons.getAsDouble())) : WaterModel.assumedPh();
    }

    /** Whether the pH is known from the report. */
    boolean phIsStated() {
        return ph.isPresent()
                || (carbonateIons.isPresent()
                        && carbonateIons.get().ph(temperature, ionicStrength()).isPresent());
    }

    /** Whether total hardness is printed beside the calcium and magnesium that make it up. */
    boolean statesHardnessTwice() {
        return hardness.isPresent() && mmolPerL.containsKey(Ion.CALCIUM) && mmolPerL.containsKey(Ion.MAGNESIUM);
    }

    /** Ionic strength of what is listed, mol/kg: enough for the activities of bicarbonate and carbonate. */
    private double ionicStrength() {
        double squares = 0;
        for (Ion ion : Ion.ALL) {
            squares += ion.charge() * ion.charge() * IonAmounts.amount(mmolPerL, ion);
        }
        if (carbonateIons.isPresent()) {
            squares += carbonateIons.get().bicarbonateMmolPerL()
                    + 4 * carbonateIons.get().carbonateMmolPerL();
        }
        return Math.min(0.5, squares / 2000);
    }

    /** The ions with some of them times a factor. */
    Map<Ion, Double> scaled(List<Ion> some, double factor) {
        return IonAmounts.changed(mmolPerL, (ion, amount) -> some.contains(ion) ? amount * factor : amount);
    }

    /** The same with other ions. */
    public WaterReport withIons(Map<Ion, Double> others) {
        return with(others, alkalinity, carbonateIons, ph);
    }

    /**
     * The same with more alkalinity: titrated where it is, else as bicarbonate.
     *
     * @param meqPerL may be negative
     */
    public WaterReport withMoreAlkalinity(double meqPerL) {
        if (alkalinity.isEmpty()) {
            CarbonateIons ions = carbonateIons.orElse(new CarbonateIons(0, 0));
            CarbonateIons more =
                    new CarbonateIons(Math.max(0, ions.bicarbonateMmolPerL() + meqPerL), ions.carbonateMmolPerL());
            return with(mmolPerL, alkalinity, Optional.of(more), ph);
        }
        Alkalinity more = new Alkalinity(alkalinity.get().meqPerL() + meqPerL);
        return with(mmolPerL, Optional.of(more), carbonateIons, ph);
    }

    /** The same with another pH. */
    public WaterReport withPh(double other) {
        return with(mmolPerL, alkalinity, carbonateIons, OptionalDouble.of(other));
    }

    private WaterReport with(
            Map<Ion, Double> ions,
            Optional<Alkalinity> titrated,
            Optional<CarbonateIons> carbonates,
            OptionalDouble samplePh) {
        return new WaterReport(
                ions,
                ionUnits,
                titrated,
                alkalinityUnit,
                carbonates,
                endPointPh,
                samplePh,
                temperature,
                hardness,
                conductivity,
                dissolvedSolidsMgPerL);
    }
}
