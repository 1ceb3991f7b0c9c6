package tunside.safety;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Where supply limits are known. */
public enum Jurisdiction {
    GREAT_BRITAIN("Great Britain"),
    EUROPEAN_UNION("European Union");

    private final String region;

    Jurisdiction(String region) {
        this.region = region;
    }

    /** As {@code supply-limits.csv} names it. */
    public String region() {
        return region;
    }

    /** One if it is named, otherwise all. */
    public static List<Jurisdiction> orAll(Optional<Jurisdiction> named) {
        return named.map(List::of).orElse(List.of(values()));
    }

    /** Supply limits that the strength is above here; the limit itself is free. */
    public List<Hazards.SupplyLimit> limitsAbove(String substance, double percent) {
        return here(substance).filter(limit -> percent > limit.abovePercent()).toList();
    }

    /** Supply limits of a substance here, passed or not. */
    public List<Hazards.SupplyLimit> limits(String substance) {
        return here(substance).toList();
    }

    private Stream<Hazards.SupplyLimit> here(String substance) {
        return Hazards.supplyLimits(substance).stream()
                .filter(limit -> limit.region().equals(region));
    }
}
