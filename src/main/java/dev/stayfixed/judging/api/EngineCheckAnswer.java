package dev.stayfixed.judging.api;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.running.RunCaution;
import dev.stayfixed.jobs.EngineCheck;
import dev.stayfixed.judging.FaultCheck;
import dev.stayfixed.web.api.ReasonAnswer;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A check with the engine running.
 *
 * @param wanted what a run has to show
 * @param figures where its figures are from
 * @param before the run that counts; missing where none does, likewise {@code after}
 * @param said both results in a sentence
 * @param fallen why a run that was chosen does not count
 * @param replaced runs in whose place another one was chosen
 * @param withdrawn missing while the check counts
 */
@Schema(name = "EngineCheck")
record EngineCheckAnswer(
        UUID id,
        UUID faultId,
        String name,
        String wanted,
        ReasonAnswer wantedFacts,
        String figures,
        @Nullable RunTold before,
        @Nullable RunTold after,
        String said,
        ReasonAnswer saidFacts,
        List<String> fallen,
        List<RunTold> replaced,
        @Nullable Withdrawn withdrawn,
        List<String> cautions) {

    /** A run, and what it came to. */
    @Schema(name = "EngineRun")
    record RunTold(
            EngineCheck.Side side,
            UUID driveId,
            Instant start,
            Finding.Held inside,
            String reason,
            ReasonAnswer reasonFacts) {

        static RunTold of(EngineCheck.Chosen run, Finding found) {
            return new RunTold(
                    run.side(),
                    run.driveId(),
                    run.start(),
                    found.held(),
                    ReasonAnswer.text(found.reason()),
                    ReasonAnswer.of(found.reason()));
        }
    }

    /** When, and why. */
    @Schema(name = "EngineCheckWithdrawn")
    record Withdrawn(Instant at, String reason) {}

    static EngineCheckAnswer of(FaultCheck check) {
        EngineCheck stated = check.stated();
        return new EngineCheckAnswer(
                stated.id(),
                stated.faultId(),
                ReasonAnswer.text(stated.check().name()),
                ReasonAnswer.text(stated.check().said()),
                ReasonAnswer.of(stated.check().said()),
                ReasonAnswer.text(check.origin()),
                told(stated, EngineCheck.Side.BEFORE, check.runs().foundBefore()),
                told(stated, EngineCheck.Side.AFTER, check.runs().foundAfter()),
                ReasonAnswer.text(check.runs().said()),
                ReasonAnswer.of(check.runs().said()),
                check.fallen().stream().map(ReasonAnswer::text).toList(),
                stated.replaced().stream()
                        .map(run -> RunTold.of(run, stated.check().judge(run.run())))
                        .toList(),
                stated.withdrawn()
                        .map(withdrawn -> new Withdrawn(withdrawn.at(), withdrawn.reason()))
                        .orElse(null),
                Stream.of(RunCaution.values()).map(ReasonAnswer::text).toList());
    }

    private static @Nullable RunTold told(EngineCheck stated, EngineCheck.Side side, Optional<Finding> found) {
        return found.flatMap(finding -> stated.latest(side).map(run -> RunTold.of(run, finding)))
                .orElse(null);
    }
}
