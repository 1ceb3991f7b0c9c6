package tunside.http.json;

import java.util.Set;
import java.util.function.Supplier;
import tunside.chemistry.Acids;
import tunside.chemistry.Salts;
import tunside.dosing.Bases;
import tunside.electrode.Buffers;
import tunside.mash.MaltClasses;

/** The tables whose ids a request may name. */
public enum KnownIds {
    MALT("is no malt class", "", () -> MaltClasses.all().keySet()),
    ACID("is no acid that the service knows", "", () -> Acids.all().keySet()),
    SALT("is no salt that the service knows", "", () -> Salts.all().keySet()),
    BASE("is no base that may be dosed", "", () -> Bases.all().keySet()),
    BUFFER(
            "is no buffer that the service knows",
            ", or state its ph",
            () -> Buffers.all().keySet());

    private final String unknown;
    private final String otherwise;
    private final Supplier<Set<String>> ids;

    KnownIds(String unknown, String otherwise, Supplier<Set<String>> ids) {
        this.unknown = unknown;
        this.otherwise = otherwise;
        this.ids = ids;
    }

    boolean has(String id) {
        return ids.get().contains(id);
    }

    /** What is wrong with an id that is none of them. */
    public String fault(String id) {
        return "\"%s\" %s; choose one of %s%s"
                .formatted(BodyFaults.shortened(id), unknown, String.join(", ", ids.get()), otherwise);
    }
}
