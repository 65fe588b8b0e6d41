package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;

/** Follows one condition through a drive in constant memory (but for its intervals). */
public interface Tracker {

    /**
     * A row was reached; its values hold from now on.
     *
     * @param active false while an earlier condition of an ordered set is still open
     */
    default void row(long at, SignalRow row, Timeline held, boolean active) {}

    /** Time passed in which these values held. */
    default void count(Timeline.Step step, Timeline held) {}

    /** Time passed of which nothing is known. */
    default void gap(Timeline.Step step) {}

    boolean isMet();

    ConditionResult result();
}
