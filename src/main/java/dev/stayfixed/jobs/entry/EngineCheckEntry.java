package dev.stayfixed.jobs.entry;

import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.running.EngineState;
import dev.stayfixed.drive.running.RunningCheck;
import dev.stayfixed.drive.running.RunningPreset;
import dev.stayfixed.drive.running.Steady;
import dev.stayfixed.drive.running.WarmUp;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.jobs.EngineCheck;
import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A check with the engine running. A figure that is missing is the typical one of the preset, where that has one.
 *
 * @param faultId the only fault of the job, if missing
 * @param source which service information, or whose figures; may be missing only where all figures are the typical ones
 * @param target of a warm-up: °C of the coolant
 * @param minutes of a warm-up: allowed from the engine start; else the least time in the state
 * @param speedMin of a warm-up: rpm to be held; likewise {@code speedMax}
 * @param startMax of a warm-up: °C of the coolant at the start, at most
 * @param ambientMin of a warm-up: °C at the start, no limit if missing; likewise {@code ambientMax}
 * @param signal that is looked at, but for a warm-up
 * @param min in the unit of the signal; one of both limits may be missing; likewise {@code max}
 * @param state in which it is looked at
 */
@Schema(name = "EngineCheckRequest")
public record EngineCheckEntry(
        @Nullable UUID faultId,
        @NotNull(message = "what is checked") RunningPreset preset,

        @Nullable @Size(max = 300, message = "at most {max} characters")
        String source,

        @Nullable @DecimalMin("-40") @DecimalMax("150") Double target,
        @Nullable @DecimalMin("0.1") @DecimalMax("600") Double minutes,
        @Nullable @DecimalMin("0") @DecimalMax("12000") Double speedMin,
        @Nullable @DecimalMin("0") @DecimalMax("12000") Double speedMax,
        @Nullable @DecimalMin("-40") @DecimalMax("150") Double startMax,
        @Nullable @DecimalMin("-60") @DecimalMax("70") Double ambientMin,
        @Nullable @DecimalMin("-60") @DecimalMax("70") Double ambientMax,
        @Nullable Signal signal,
        @Nullable Double min,
        @Nullable Double max,
        @Nullable EngineState state) {

    /** The typical figures of a preset, as they would be written. */
    public static EngineCheckEntry of(@Nullable UUID faultId, RunningPreset preset) {
        EngineCheckEntry empty = new EngineCheckEntry(
                faultId, preset, null, null, null, null, null, null, null, null, null, null, null, null);
        return preset.typical()
                .map(typical -> typical.match(new RunningCheck.Cases<EngineCheckEntry>() {
                    @Override
                    public EngineCheckEntry warmUp(WarmUp check) {
                        return new EngineCheckEntry(
                                faultId,
                                preset,
                                null,
                                check.target(),
                                minutes(check.within()),
                                check.engineSpeed().min(),
                                check.engineSpeed().max(),
                                check.coldest().max(),
                                null,
                                null,
                                null,
                                null,
                                null,
                                null);
                    }

                    @Override
                    public EngineCheckEntry steady(Steady check) {
                        return new EngineCheckEntry(
                                faultId,
                                preset,
                                null,
                                null,
                                minutes(check.atLeast()),
                                null,
                                null,
                                null,
                                null,
                                null,
                                check.range().signal(),
                                check.range().min(),
                                check.range().max(),
                                check.state());
                    }
                }))
                .orElse(empty);
    }

    private static double minutes(Duration time) {
        return time.toSeconds() / 60.0;
    }

    /**
     * The check that was meant.
     *
     * @throws Refused where its figures make none, or nobody says whose they are
     */
    public EngineCheck.Stated stated() {
        EngineCheckEntry rounded = rounded();
        RunningCheck check = preset == RunningPreset.WARM_UP ? rounded.warmUp() : rounded.steady();
        Optional<String> said = Given.optional(source);
        if (said.isEmpty() && preset.typical().filter(check::equals).isEmpty()) {
            throw Refused.content(new Mistake(
                    "source", null, "which service information, or whose figures; only the typical ones need none"));
        }
        return new EngineCheck.Stated(Optional.ofNullable(faultId), check, said);
    }

    /** To a millionth: figures that were typed in other units are off by the last binary digit. */
    private EngineCheckEntry rounded() {
        return new EngineCheckEntry(
                faultId,
                preset,
                source,
                rounded(target),
                minutes,
                rounded(speedMin),
                rounded(speedMax),
                rounded(startMax),
                rounded(ambientMin),
                rounded(ambientMax),
                signal,
                rounded(min),
                rounded(max),
                state);
    }

    private static @Nullable Double rounded(@Nullable Double figure) {
        return figure == null || !Double.isFinite(figure) ? figure : Double.valueOf(Math.round(figure * 1e6) / 1e6);
    }

    private EngineCheckEntry typical() {
        return of(faultId, preset);
    }

    private static <T> T or(String path, @Nullable T said, @Nullable T typical) {
        T value = said == null ? typical : said;
        if (value == null) {
            throw Refused.content(new Mistake(path, null, "a value, as there is no typical one"));
        }
        return value;
    }

    private RunningCheck warmUp() {
        SignalRange speed = Refused.unless(
                "speedMin",
                () -> new SignalRange(
                        Signal.ENGINE_SPEED,
                        or("speedMin", speedMin, typical().speedMin),
                        or("speedMax", speedMax, typical().speedMax)));
        Optional<SignalRange> ambient = ambientMin == null && ambientMax == null
                ? Optional.empty()
                : Optional.of(range("ambientMin", Signal.AMBIENT, ambientMin, ambientMax));
        return Refused.unless(
                "target",
                () -> new WarmUp(
                        or("target", target, typical().target),
                        time(),
                        speed,
                        SignalRange.atMost(Signal.COOLANT, or("startMax", startMax, typical().startMax)),
                        ambient));
    }

    private RunningCheck steady() {
        boolean isOwn = min != null || max != null;
        Signal looked = or("signal", signal, typical().signal);
        return new Steady(
                range("min", looked, isOwn ? min : typical().min, isOwn ? max : typical().max),
                or("state", state, typical().state),
                time());
    }

    private Duration time() {
        return Duration.ofSeconds(Math.max(1, Math.round(or("minutes", minutes, typical().minutes) * 60)));
    }

    private static SignalRange range(String path, Signal signal, @Nullable Double least, @Nullable Double most) {
        return Refused.unless(
                path,
                () -> new SignalRange(
                        signal,
                        least == null ? Double.NEGATIVE_INFINITY : least,
                        most == null ? Double.POSITIVE_INFINITY : most));
    }
}
