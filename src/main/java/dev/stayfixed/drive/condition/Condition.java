package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.reason.Reason;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One enabling condition of a monitor, or one criterion of a repair, as service information states them. */
public sealed interface Condition permits Soak, AtStart, StartDifference, Reach, Hold {

    /** The condition itself: "vehicle speed 70 to 110 km/h for 60 s unbroken". */
    Reason said();

    /** What a driver would have to do to meet it, as a sentence. */
    Reason toDo();

    /** The part of a drive plan that it belongs to. */
    Phase phase();

    /** Signals that have to be in range all the while; they say nothing about a time of their own. */
    List<SignalRange> whileIn();

    /** Decided before the drive begins, so that no driving can mend it. */
    default boolean isBeforeDriving() {
        return phase() == Phase.SOAK || phase() == Phase.START;
    }

    /** Follows it through a drive that began after this many hours with the engine off. */
    Tracker tracker(OptionalDouble soakHours);

    /**
     * Whether a drive of which only a summary is known may have met it. A summary has no sequence: a yes means that nothing in it
     * speaks against it. Empty where no summary could tell.
     */
    Optional<Finding> inSummary(DriveSummary summary);

    /** What it is: one method for each, so that a condition more does not go unnoticed where conditions are read. */
    <T> T match(Cases<T> cases);

    /** What to make of each. */
    interface Cases<T> {
        T soak(Soak soak);

        T atStart(AtStart start);

        T startDifference(StartDifference difference);

        T reach(Reach reach);

        T hold(Hold hold);
    }
}
