package tunside.http.picture;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import tunside.http.calibration.CalibrationEvaluationResponse;
import tunside.http.dosing.AcidDoseResponse;
import tunside.http.mash.MashPredictionResponse;
import tunside.http.reading.PhReadingResponse;

/** Which answers have a picture, and who draws it. */
public final class Pictures {
    /** Media type of a picture. */
    public static final String MEDIA_TYPE = "image/svg+xml";

    private static final Map<Class<?>, Function<Object, Picture>> PAINTERS = new LinkedHashMap<>();

    static {
        put(CalibrationEvaluationResponse.class, CalibrationPicture::of);
        put(PhReadingResponse.class, PhReadingPicture::of);
        put(MashPredictionResponse.class, MashPredictionPicture::of);
        put(AcidDoseResponse.class, AcidDosePicture::of);
    }

    private Pictures() {}

    /** Names of the answers that have a picture, as the contract calls them. */
    public static List<String> answers() {
        return PAINTERS.keySet().stream().map(Class::getSimpleName).toList();
    }

    /** The picture of an answer as SVG; empty where it has none. */
    public static Optional<String> of(Object answer) {
        return Optional.ofNullable(PAINTERS.get(answer.getClass()))
                .map(painter -> painter.apply(answer).svg());
    }

    private static <T> void put(Class<T> answer, Function<T, Picture> painter) {
        PAINTERS.put(answer, given -> painter.apply(answer.cast(given)));
    }
}
