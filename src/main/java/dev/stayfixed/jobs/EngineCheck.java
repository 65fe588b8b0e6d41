package dev.stayfixed.jobs;

import dev.stayfixed.drive.running.Run;
import dev.stayfixed.drive.running.RunningCheck;
import dev.stayfixed.reason.Kind;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * A check with the engine running that a shop stated for a fault. What was chosen for it stays: a run that failed does not disappear
 * because another one was taken, nor a check because it was withdrawn.
 *
 * @param source which service information its figures are from; empty where they are common practice
 * @param runs in the order in which they were chosen; of each side the latest counts
 */
public record EngineCheck(
        UUID id,
        UUID jobId,
        UUID faultId,
        RunningCheck check,
        Optional<String> source,
        Instant statedAt,
        List<Chosen> runs,
        Optional<Withdrawn> withdrawn) {

    public EngineCheck {
        runs = List.copyOf(runs);
    }

    /**
     * What is stated.
     *
     * @param faultId empty for the only fault of the job
     */
    public record Stated(Optional<UUID> faultId, RunningCheck check, Optional<String> source) {}

    /** Of the repair. */
    public enum Side implements Kind {
        BEFORE,
        AFTER
    }

    /**
     * A recorded drive that was taken for a run, and what it told of the check.
     *
     * @param revision of the drive: where its record was corrected since, the run says nothing any more
     * @param start of the drive
     */
    public record Chosen(Side side, UUID driveId, int revision, Instant start, Instant chosenAt, Run run) {}

    /** The check was none of this fault, or its figures were wrong. */
    public record Withdrawn(Instant at, String reason) {}

    /** The run that counts. */
    public Optional<Chosen> latest(Side side) {
        return runs.stream().filter(run -> run.side() == side).reduce((first, second) -> second);
    }

    /** Those in whose place another one was taken, in the order in which they were chosen. */
    public List<Chosen> replaced() {
        return runs.stream()
                .filter(run -> latest(run.side()).filter(run::equals).isEmpty())
                .toList();
    }
}
