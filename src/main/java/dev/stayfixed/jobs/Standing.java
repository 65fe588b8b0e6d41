package dev.stayfixed.jobs;

import dev.stayfixed.verification.StateName;
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
public record Standing(
        StateName state, String words, OptionalInt passes, int needed, boolean decided, boolean comeback) {

    public static Standing of(VerificationState state, int needed) {
        StateName name = state.name();
        OptionalInt passes = switch (name) {
            case AWAITING_REPAIR -> OptionalInt.empty();
            case CONFIRMED_FIXED -> OptionalInt.of(needed);
            case WAITING_FOR_FIRST_TRIP, PASSING, FAILED_ONCE, RECURRED -> OptionalInt.of(state.passes());
        };
        boolean comeback = name.isFailure() && state.fixedBefore().isPresent();
        return new Standing(name, Wording.METRIC.words(state.said()), passes, needed, name.isDecided(), comeback);
    }
}
