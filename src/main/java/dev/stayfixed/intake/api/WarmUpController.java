package dev.stayfixed.intake.api;

import dev.stayfixed.archive.RecordedSignals;
import dev.stayfixed.drive.condition.ConditionReport;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.condition.WarmUpCheck;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.judging.api.ConditionsAnswer;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Conditions")
@RestController
@RequestMapping(Link.BASE)
class WarmUpController {

    private static final String DEFAULTS =
            "common practice, no source; the service information of the vehicle overrides it";

    private final RecordedSignals signals;
    private final Jobs jobs;

    WarmUpController(RecordedSignals signals, Jobs jobs) {
        this.signals = signals;
        this.jobs = jobs;
    }

    /**
     * Figures of the check; what is missing is common practice.
     *
     * @param startMax °C, the coolant at the start at most; 40 if missing
     * @param target °C to be reached; 71 if missing
     * @param within s from the engine start; 900 if missing
     * @param engineSpeedMin rpm to be held; 500 if missing
     * @param engineSpeedMax rpm; 4000 if missing
     * @param leadIn s to bring the engine to its speed; 30 if missing
     * @param ambientMin °C at the start; no limit if missing
     * @param ambientMax °C at the start; no limit if missing
     */
    record Figures(
            @Nullable Double startMax,
            @Nullable Double target,
            @Nullable Integer within,
            @Nullable Double engineSpeedMin,
            @Nullable Double engineSpeedMax,
            @Nullable Integer leadIn,
            @Nullable Double ambientMin,
            @Nullable Double ambientMax) {

        boolean areStated() {
            return startMax != null && target != null && within != null && engineSpeedMin != null;
        }

        WarmUpCheck check() {
            if ((within != null && (within < 1 || within > 36_000))
                    || (leadIn != null && (leadIn < 0 || leadIn > 3_600))) {
                throw new Refused(
                        ProblemType.INVALID_PARAMETER,
                        "within, leadIn: found " + within + " and " + leadIn
                                + ", expected 1 to 36000 s and 0 to 3600 s");
            }
            try {
                return new WarmUpCheck(
                        SignalRange.atMost(Signal.COOLANT, or(startMax, 40)),
                        or(target, 71),
                        Duration.ofSeconds(within == null ? 900 : within),
                        new SignalRange(Signal.ENGINE_SPEED, or(engineSpeedMin, 500), or(engineSpeedMax, 4_000)),
                        Duration.ofSeconds(leadIn == null ? 30 : leadIn),
                        ambient());
            } catch (IllegalArgumentException e) {
                throw new Refused(ProblemType.INVALID_PARAMETER, String.valueOf(e.getMessage()));
            }
        }

        private Optional<SignalRange> ambient() {
            return ambientMin == null && ambientMax == null
                    ? Optional.empty()
                    : Optional.of(new SignalRange(
                            Signal.AMBIENT,
                            or(ambientMin, Double.NEGATIVE_INFINITY),
                            or(ambientMax, Double.POSITIVE_INFINITY)));
        }

        private static double or(@Nullable Double value, double otherwise) {
            return value == null ? otherwise : value;
        }
    }

    /**
     * Whether the repair mended the warm-up.
     *
     * @param figures where figures are from that were not sent
     */
    record Answer(
            UUID jobId,
            DriveAnswer.Told mended,
            Run before,
            Run after,
            @Nullable String figures,
            String caution) {}

    /** One of the two runs. */
    record Run(UUID driveId, DriveAnswer.Told held, List<ConditionsAnswer.Result> results) {
        static Run of(UUID driveId, ConditionReport report) {
            return new Run(
                    driveId,
                    DriveAnswer.Told.of(report.overall()),
                    report.results().stream().map(ConditionsAnswer.Result::of).toList());
        }
    }

    @Operation(
            summary =
                    "The same cold start before and after the repair: did the coolant come to its temperature in time?")
    @GetMapping("/jobs/{jobId}/warm-up-check")
    Answer check(
            @PathVariable UUID jobId,
            @RequestParam UUID before,
            @RequestParam UUID after,
            @ModelAttribute Figures figures) {
        RecordedSignals.WarmUp warmUp = signals.warmUp(jobs.get(jobId).vehicleId(), figures.check(), before, after);
        return new Answer(
                jobId,
                DriveAnswer.Told.of(warmUp.mended()),
                Run.of(before, warmUp.before().report()),
                Run.of(after, warmUp.after().report()),
                figures.areStated() ? null : DEFAULTS,
                "Never open a hot cooling system; keep clear of fans and belts, and run an engine only where its exhaust can leave.");
    }
}
