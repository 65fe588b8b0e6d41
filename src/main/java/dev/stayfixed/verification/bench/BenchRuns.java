package dev.stayfixed.verification.bench;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.running.Run;
import dev.stayfixed.drive.running.RunningCheck;
import dev.stayfixed.reason.Reason;
import java.util.Optional;

/**
 * A check with the engine running, and its runs around one repair.
 *
 * @param before empty where none was recorded; likewise {@code after}
 */
public record BenchRuns(RunningCheck check, Optional<Run> before, Optional<Run> after) {

    public Optional<Finding> foundBefore() {
        return before.map(check::judge);
    }

    public Optional<Finding> foundAfter() {
        return after.map(check::judge);
    }

    boolean isWrongAfter() {
        return foundAfter().filter(Finding::isNo).isPresent();
    }

    boolean isRightAfter() {
        return foundAfter().filter(Finding::isYes).isPresent();
    }

    /** The fault showed before the repair and does not after it, in runs that can be held against each other. */
    boolean showsChange() {
        return isRightAfter() && foundBefore().filter(Finding::isNo).isPresent() && unlike().isEmpty();
    }

    /** Why the two runs cannot be held against each other; empty where they can, or where there is one only. */
    public Optional<Reason> unlike() {
        return before.flatMap(first -> after.flatMap(second -> check.unlike(first, second)));
    }

    /** "warm-up: before the repair …; after it …". */
    public Reason said() {
        Reason runs = Reason.of(BenchReason.RUNS, check.name(), reason(foundBefore()), reason(foundAfter()));
        return unlike().map(why -> Reason.of(BenchReason.RUNS_UNLIKE, runs, why))
                .orElse(runs);
    }

    Reason after(Finding found) {
        return Reason.of(BenchReason.AFTER_RUN, check.name(), found.reason());
    }

    private static Reason reason(Optional<Finding> found) {
        return found.map(Finding::reason).orElseGet(() -> Reason.of(BenchReason.NO_RUN));
    }
}
