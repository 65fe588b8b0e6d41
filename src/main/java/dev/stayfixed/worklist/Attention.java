package dev.stayfixed.worklist;

import java.time.Instant;

/** What an open job needs from a person, the most pressing first. */
public enum Attention {
    CAME_BACK,
    READY_TO_CLOSE,
    STALLED,
    CONTRADICTORY,
    FAILED_ONCE,
    REPAIR_DUE,
    WAITING;

    /**
     * How the faults of a job stand, in numbers.
     *
     * @param back recurred, or failed after being confirmed fixed
     * @param failedOnce failed once, comebacks included
     */
    public record Facts(int faults, int fixed, int back, int failedOnce, int contradictory, int awaitingRepair) {}

    /** What the job needs, as long as it is not silent. */
    public static Attention of(Facts facts) {
        if (facts.back() > 0) {
            return CAME_BACK;
        }
        if (facts.fixed() == facts.faults()) {
            return READY_TO_CLOSE;
        }
        if (facts.contradictory() > 0) {
            return CONTRADICTORY;
        }
        if (facts.failedOnce() > 0) {
            return FAILED_ONCE;
        }
        return facts.awaitingRepair() > 0 ? REPAIR_DUE : WAITING;
    }

    /** Whether a job that needs this has stalled where nothing is heard of it. */
    boolean canStall() {
        return compareTo(STALLED) > 0;
    }

    /**
     * What the job needs now.
     *
     * @param news the latest of the opening, the last repair and the last drive
     * @param silentSince news from before this are too old: the job has stalled
     */
    public Attention after(Instant news, Instant silentSince) {
        return canStall() && news.isBefore(silentSince) ? STALLED : this;
    }
}
