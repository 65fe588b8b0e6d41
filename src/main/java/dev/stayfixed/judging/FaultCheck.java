package dev.stayfixed.judging;

import dev.stayfixed.drive.running.Run;
import dev.stayfixed.jobs.EngineCheck;
import dev.stayfixed.jobs.EngineCheck.Chosen;
import dev.stayfixed.jobs.EngineCheck.Side;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.bench.BenchRuns;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * A check with the engine running, as it stands for the latest repair of its fault.
 *
 * @param repaired the latest repair; empty before one is recorded
 * @param runs those that count
 * @param fallen why a run that was chosen does not count
 */
public record FaultCheck(EngineCheck stated, Optional<Instant> repaired, BenchRuns runs, List<Reason> fallen) {

    public FaultCheck {
        fallen = List.copyOf(fallen);
    }

    static FaultCheck of(EngineCheck stated, Optional<Instant> repaired, Map<UUID, Integer> revisions) {
        return new FaultCheck(
                stated,
                repaired,
                new BenchRuns(
                        stated.check(),
                        counting(stated, Side.BEFORE, repaired, revisions),
                        counting(stated, Side.AFTER, repaired, revisions)),
                Stream.of(Side.values())
                        .flatMap(side -> stated.latest(side).stream())
                        .flatMap(run -> fallen(run, repaired, revisions).stream())
                        .toList());
    }

    private static Optional<Run> counting(
            EngineCheck stated, Side side, Optional<Instant> repaired, Map<UUID, Integer> revisions) {
        return stated.latest(side)
                .filter(run -> fallen(run, repaired, revisions).isEmpty())
                .map(Chosen::run);
    }

    /** Its record is another one by now, or the repair has been dated anew or made again. */
    private static Optional<Reason> fallen(Chosen run, Optional<Instant> repaired, Map<UUID, Integer> revisions) {
        Part start = new Part.Minute(run.start());
        if (!Objects.equals(revisions.get(run.driveId()), run.revision())) {
            return Optional.of(Reason.of(CheckReason.RUN_GONE, run.side(), start));
        }
        return isOn(run.side(), run.start(), repaired)
                ? Optional.empty()
                : Optional.of(Reason.of(
                        CheckReason.RUN_ON_OTHER_SIDE,
                        run.side(),
                        start,
                        new Part.Minute(repaired.orElse(run.start()))));
    }

    /** Before the first repair every drive is one from before it. */
    static boolean isOn(Side side, Instant start, Optional<Instant> repaired) {
        boolean isAfter = repaired.filter(at -> !start.isBefore(at)).isPresent();
        return isAfter == (side == Side.AFTER);
    }

    /** Not withdrawn. */
    public boolean counts() {
        return stated.withdrawn().isEmpty();
    }

    /** Where its figures are from. */
    public Reason origin() {
        return stated.source()
                .map(source -> Reason.of(CheckReason.SERVICE_INFORMATION, Part.verbatim(source)))
                .orElseGet(() -> Reason.of(CheckReason.COMMON_PRACTICE));
    }
}
