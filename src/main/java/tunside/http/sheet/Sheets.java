package tunside.http.sheet;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import tunside.http.answer.Answered;
import tunside.http.dosing.AcidDoseRequest;
import tunside.http.dosing.AcidDoseResponse;
import tunside.http.mash.MashPredictionRequest;
import tunside.http.mash.MashPredictionResponse;

/** Which answers have a sheet. */
public final class Sheets {
    /** Media type of a sheet. */
    public static final String MEDIA_TYPE = "text/html";

    private static final Map<Class<?>, BiFunction<Object, Object, BrewDaySheet>> SHEETS = new LinkedHashMap<>();

    static {
        put(MashPredictionRequest.class, MashPredictionResponse.class, MashPredictionSheet::of);
        put(AcidDoseRequest.class, AcidDoseResponse.class, AcidDoseSheet::of);
    }

    private Sheets() {}

    /** Names of the answers that have a sheet, as the contract calls them. */
    public static List<String> answers() {
        return SHEETS.keySet().stream().map(Class::getSimpleName).toList();
    }

    static Optional<BrewDaySheet> of(Answered answered) {
        return Optional.ofNullable(SHEETS.get(answered.answer().getClass()))
                .map(sheet -> sheet.apply(answered.question(), answered.answer()));
    }

    private static <Q, A> void put(Class<Q> question, Class<A> answer, BiFunction<Q, A, BrewDaySheet> sheet) {
        SHEETS.put(answer, (asked, given) -> sheet.apply(question.cast(asked), answer.cast(given)));
    }
}
