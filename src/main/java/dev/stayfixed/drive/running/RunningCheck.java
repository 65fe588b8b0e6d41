package dev.stayfixed.drive.running;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.reason.Reason;
import java.util.Optional;
import java.util.Set;

/**
 * What a run of the engine has to show. A run that does not suit the check (a warm start, a signal that was not recorded, a log that ends
 * too early) is neither good nor bad: it does not tell.
 */
public sealed interface RunningCheck permits WarmUp, Steady {

    /** Where the signal has to lie in the end; also the band of a picture. */
    SignalRange range();

    /** What a log has to hold so that the check can be made by it. */
    Set<Signal> needed();

    /** Whether a recorded drive is worth being proposed: all that is needed was recorded, and a warm-up began cold. */
    default boolean suits(SignalFacts facts) {
        return facts.extents().keySet().containsAll(needed());
    }

    /** Takes the rows of a run. */
    RunMeter meter();

    /** Inside the limits, outside them, or not to be told from this run. */
    Finding judge(Run run);

    /** Why two runs cannot be held against each other; empty where they can. */
    Optional<Reason> unlike(Run before, Run after);

    /** "warm-up"; a word or two. */
    Reason name();

    /** What is wanted: "coolant temperature of 88 °C within 12 min of a cold start". */
    Reason said();

    /** What it is: one method for each. */
    <T> T match(Cases<T> cases);

    /** What to make of each. */
    interface Cases<T> {
        T warmUp(WarmUp check);

        T steady(Steady check);
    }
}
