package dev.stayfixed.jobs;

import dev.stayfixed.verification.VerificationState;
import dev.stayfixed.wording.Wording;
import java.util.OptionalInt;

/**
 * Where a fault stands: what is kept of a verdict, so that lists need no judging.
 *
 * @param words for a person
 * @param passes consecutive clean trips so far, while they are being counted
 * @param needed clean trips that prove the repair
 * @param decided confirmed fixed or recurred
 * @param comeback it was confirmed fixed before, in the same repair attempt
 */
public record Standing(State state, String words, OptionalInt passes, int needed, boolean decided, boolean comeback) {

    /** The kinds of {@link VerificationState}, as words of the wire. */
    public enum State {
        AWAITING_REPAIR,
        WAITING_FOR_FIRST_TRIP,
        PASSING,
        CONFIRMED_FIXED,
        FAILED_ONCE,
        RECURRED
    }

    public static Standing of(VerificationState state, int needed) {
        String words = Wording.METRIC.words(state.said());
        if (state instanceof VerificationState.AwaitingRepair) {
            return new Standing(State.AWAITING_REPAIR, words, OptionalInt.empty(), needed, false, false);
        }
        if (state instanceof VerificationState.WaitingForFirstTrip) {
            return new Standing(State.WAITING_FOR_FIRST_TRIP, words, OptionalInt.of(0), needed, false, false);
        }
        if (state instanceof VerificationState.Passing passing) {
            return new Standing(State.PASSING, words, OptionalInt.of(passing.passes()), needed, false, false);
        }
        if (state instanceof VerificationState.ConfirmedFixed) {
            return new Standing(State.CONFIRMED_FIXED, words, OptionalInt.of(needed), needed, true, false);
        }
        if (state instanceof VerificationState.FailedOnce failed) {
            boolean comeback = failed.fixedBefore().isPresent();
            return new Standing(State.FAILED_ONCE, words, OptionalInt.of(0), needed, false, comeback);
        }
        if (state instanceof VerificationState.Recurred recurred) {
            boolean comeback = recurred.fixedBefore().isPresent();
            return new Standing(State.RECURRED, words, OptionalInt.of(0), needed, true, comeback);
        }
        throw new IllegalStateException("a state of verification that has no word on the wire: " + state);
    }
}
