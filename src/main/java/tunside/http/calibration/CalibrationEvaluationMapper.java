package tunside.http.calibration;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import tunside.electrode.BufferCup;
import tunside.electrode.BufferReading;
import tunside.electrode.BufferState;
import tunside.electrode.CalibrationEvaluation;
import tunside.electrode.CalibrationSession;
import tunside.electrode.MeterCompensation;
import tunside.electrode.MeterReadout;
import tunside.electrode.Preparation;
import tunside.electrode.ReadingUncertainty;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.http.problem.UnanswerableException;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;
import tunside.quantity.TimeSpan;

/** Reads the readings of a calibration and has them judged. */
final class CalibrationEvaluationMapper {
    private static final double LONGEST_SETTLING_S = 3600;
    private static final double OLDEST_S = 10 * 366 * 86_400.0;
    private static final double LARGEST_MV = 1000;

    private CalibrationEvaluationMapper() {}

    static CalibrationEvaluationResponse answer(CalibrationEvaluationRequest request) {
        CalibrationSession session = toSession(request, Place.root());
        if (!(session.spanPh() >= CalibrationSession.leastSpanPh())) {
            throw new UnanswerableException(
                    "/readings",
                    "the outer buffers are %s pH apart; a line needs at least %s: add a second buffer, 4 and 7 for a mash"
                            .formatted(
                                    Rounded.text(Rounded.decimals(session.spanPh(), 2)),
                                    Rounded.text(CalibrationSession.leastSpanPh())));
        }
        return CalibrationEvaluationAnswer.of(CalibrationEvaluation.of(session));
    }

    private static CalibrationSession toSession(CalibrationEvaluationRequest request, Place place) {
        MeterReadout readout = request.readout() == null ? MeterReadout.POTENTIAL : request.readout();
        MeterCompensation compensation = MeterRequest.toCompensation(request.meter(), place.member("meter"));
        ReadingUncertainty uncertainty =
                ReadingUncertaintyRequest.toUncertainty(request.uncertainty(), place.member("uncertainty"));
        List<BufferReading> readings = new ArrayList<>();
        for (int i = 0; i < request.readings().size(); i++) {
            toReading(
                            request.readings().get(i),
                            readout,
                            compensation,
                            place.member("readings").item(i))
                    .ifPresent(readings::add);
        }
        place.stopIfFaulty();
        return new CalibrationSession(
                readings,
                readout,
                compensation,
                uncertainty,
                request.expectedPh() == null ? CalibrationSession.usualExpectedPh() : request.expectedPh());
    }

    private static Optional<BufferReading> toReading(
            BufferReadingRequest request, MeterReadout readout, MeterCompensation compensation, Place place) {
        Temperature temperature = request.temperature().toTemperature(place.member("temperature"), -10, 100);
        Optional<TimeSpan> settling = Optional.ofNullable(request.settlingTime())
                .map(time -> time.toTimeSpan(place.member("settlingTime"), 0, LONGEST_SETTLING_S));
        Optional<Potential> potential = toPotential(request, readout, compensation, temperature, place);
        Optional<BufferCup> cup = toCup(request, place);
        if (cup.isEmpty() || potential.isEmpty()) {
            return Optional.empty();
        }
        return Optional.ofNullable(place.member("temperature")
                .build(() -> new BufferReading(cup.get(), temperature, potential.get(), settling), null));
    }

    private static Optional<Potential> toPotential(
            BufferReadingRequest request,
            MeterReadout readout,
            MeterCompensation compensation,
            Temperature temperature,
            Place place) {
        boolean millivolts = readout == MeterReadout.POTENTIAL;
        String wanted = millivolts ? "potential" : "displayed";
        if (millivolts ? request.displayed() != null : request.potential() != null) {
            place.member(millivolts ? "displayed" : "potential")
                    .fault(
                            millivolts
                                    ? "belongs to a readout of as-found or after-adjusting; state which in readout"
                                    : "belongs to a readout of potential; give the displayed pH or change readout");
        }
        if (millivolts ? request.potential() == null : request.displayed() == null) {
            place.member(wanted).fault("is missing: this readout needs it in every reading");
            return Optional.empty();
        }
        return Optional.of(
                millivolts
                        ? requireNonNull(request.potential())
                                .toPotential(place.member("potential"), -LARGEST_MV, LARGEST_MV)
                        : compensation.potentialBehind(requireNonNull(request.displayed()), temperature));
    }

    private static Optional<BufferCup> toCup(BufferReadingRequest request, Place place) {
        Preparation preparation = toPreparation(request.preparation(), place.member("preparation"));
        OptionalDouble uncertainty =
                request.phUncertainty() == null ? OptionalDouble.empty() : OptionalDouble.of(request.phUncertainty());
        return BufferCups.toCup(request.buffer(), request.ph(), uncertainty, preparation, place);
    }

    private static Preparation toPreparation(@Nullable BufferPreparationRequest request, Place place) {
        if (request == null) {
            return Preparation.fresh();
        }
        if ((request.age() == null) != (request.since() == null)) {
            place.member(request.age() == null ? "age" : "since").fault("is missing: age and since belong together");
        }
        Optional<TimeSpan> age =
                Optional.ofNullable(request.age()).map(time -> time.toTimeSpan(place.member("age"), 0, OLDEST_S));
        OptionalDouble ratio = waterRatio(request, place);
        BufferState state = request.since() == null ? BufferState.MADE_UP : request.since();
        return place.member("waterUsed").build(() -> new Preparation(ratio, age, state), Preparation.fresh());
    }

    private static OptionalDouble waterRatio(BufferPreparationRequest request, Place place) {
        if ((request.labelVolume() == null) != (request.waterUsed() == null)) {
            place.member(request.labelVolume() == null ? "labelVolume" : "waterUsed")
                    .fault("is missing: labelVolume and waterUsed belong together");
            return OptionalDouble.empty();
        }
        if (request.labelVolume() == null) {
            return OptionalDouble.empty();
        }
        double label = request.labelVolume()
                .toVolume(place.member("labelVolume"), 0.001, 100)
                .litres();
        double used = request.waterUsed()
                .toVolume(place.member("waterUsed"), 0.0001, 200)
                .litres();
        return OptionalDouble.of(used / label);
    }
}
