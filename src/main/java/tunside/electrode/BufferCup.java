package tunside.electrode;

import java.util.Optional;
import java.util.OptionalDouble;
import tunside.quantity.Temperature;

/**
 * A cup of buffer: one of the tables, or one whose pH the caller states.
 *
 * @param buffer of the tables, or empty
 * @param ownPh stated by the caller at the temperature of the reading, 0 to 14; empty where a buffer is named
 * @param ownUncertainty stated by the caller, standard uncertainty in pH, 0 to 0.5; empty for the usual 0.01
 * @param preparation how it came to be
 */
public record BufferCup(
        Optional<Buffer> buffer, OptionalDouble ownPh, OptionalDouble ownUncertainty, Preparation preparation) {
    private static final double USUAL_UNCERTAINTY = 0.01;
    private static final double NEAR = 0.12;

    public BufferCup {
        if (buffer.isPresent() == ownPh.isPresent()) {
            throw new IllegalArgumentException("name a buffer or state its pH: one of both");
        }
        if (ownPh.isPresent() && !(ownPh.getAsDouble() >= 0 && ownPh.getAsDouble() <= 14)) {
            throw new IllegalArgumentException(
                    "pH of the buffer must be from 0 to 14 but is %s".formatted(ownPh.getAsDouble()));
        }
        if (ownUncertainty.isPresent() && !(ownUncertainty.getAsDouble() >= 0 && ownUncertainty.getAsDouble() <= 0.5)) {
            throw new IllegalArgumentException("uncertainty of the buffer must be from 0 to 0.5 but is %s"
                    .formatted(ownUncertainty.getAsDouble()));
        }
    }

    /** A fresh buffer of the tables. */
    public static BufferCup of(Buffer buffer) {
        return new BufferCup(Optional.of(buffer), OptionalDouble.empty(), OptionalDouble.empty(), Preparation.fresh());
    }

    /** A fresh buffer of stated pH. */
    public static BufferCup ofPh(double ph) {
        return new BufferCup(Optional.empty(), OptionalDouble.of(ph), OptionalDouble.empty(), Preparation.fresh());
    }

    /** As findings name it. */
    public String label() {
        return buffer.map(Buffer::id).orElseGet(() -> "pH " + ownPh.getAsDouble());
    }

    /** What it is made of: from the table, or guessed from the stated pH where that is near a common buffer. */
    public Optional<BufferSubstance> substance() {
        return buffer.isPresent() ? buffer.map(Buffer::substance) : near(ownPh.getAsDouble());
    }

    /**
     * What it is taken to be at its temperature.
     *
     * @throws IllegalArgumentException outside the buffer's table
     */
    public BufferValue value(Temperature temperature) {
        double fresh = tabledPh(temperature);
        double freshUncertainty =
                ownUncertainty.orElse(buffer.map(Buffer::standardUncertaintyPh).orElse(USUAL_UNCERTAINTY));
        if (substance().isEmpty()) {
            return new BufferValue(fresh, freshUncertainty, 0, 0);
        }
        BufferSubstance made = substance().get();
        double byWater = BufferChange.byWater(made, preparation.excessWater());
        double lives = preparation.shelfLives(made);
        double byAge =
                BufferChange.byCarbonDioxide(made, lives * ElectrodeLimits.preparation("absorbed-in-one-shelf-life"));
        double overAge = Math.max(0, lives - 1) * ElectrodeLimits.preparation("over-age-uncertainty");
        double waterUncertainty = ElectrodeLimits.preparation("water-shift-relative-uncertainty") * byWater;
        return new BufferValue(
                fresh + byWater + byAge,
                Math.sqrt(freshUncertainty * freshUncertainty
                        + waterUncertainty * waterUncertainty
                        + byAge * byAge
                        + overAge * overAge),
                byWater,
                byAge);
    }

    /** Its pH if it was at another temperature than stated; empty where no table reaches. */
    OptionalDouble phIf(Temperature stated, Temperature other) {
        Optional<Buffer> table = table();
        if (table.isEmpty() || !table.get().covers(other) || !table.get().covers(stated)) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                value(stated).ph() + table.get().ph(other) - table.get().ph(stated));
    }

    /** The table that says how it changes with temperature; empty for a stated pH that is near no common buffer. */
    Optional<Buffer> table() {
        return buffer.isPresent() ? buffer : substance().map(BufferCup::tableOf);
    }

    /** The table that stands for a substance. */
    static Buffer tableOf(BufferSubstance substance) {
        return Buffers.get(
                switch (substance) {
                    case TETROXALATE -> "jis-tetroxalate";
                    case TARTRATE -> "iupac-tartrate";
                    case CITRATE -> "iupac-citrate";
                    case PHTHALATE -> "iupac-phthalate";
                    case PHOSPHATE -> "iupac-phosphate";
                    case PHOSPHATE_1_TO_3_5 -> "iupac-phosphate-7.41";
                    case TECHNICAL_PHOSPHATE -> "technical-7.00";
                    case BORAX -> "iupac-borax";
                    case CARBONATE -> "iupac-carbonate";
                });
    }

    private double tabledPh(Temperature temperature) {
        return buffer.isPresent() ? buffer.get().ph(temperature) : ownPh.getAsDouble();
    }

    private static Optional<BufferSubstance> near(double ph) {
        if (ph >= 6.93 && ph <= 7 + NEAR) {
            return Optional.of(BufferSubstance.TECHNICAL_PHOSPHATE);
        }
        if (ph >= 6.86 - NEAR && ph < 6.93) {
            return Optional.of(BufferSubstance.PHOSPHATE);
        }
        if (Math.abs(ph - 4) <= NEAR) {
            return Optional.of(BufferSubstance.PHTHALATE);
        }
        if (ph >= 8.8 && ph <= 9.5) {
            return Optional.of(BufferSubstance.BORAX);
        }
        return ph >= 9.6 && ph <= 10.35 ? Optional.of(BufferSubstance.CARBONATE) : Optional.empty();
    }
}
