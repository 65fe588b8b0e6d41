package dev.stayfixed.jobs;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.StandingReason;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.VerificationState;
import dev.stayfixed.wording.Wording;
import java.util.OptionalInt;

/**
 * Where a fault stands: what is kept of a verdict, so that lists need no judging.
 *
 * @param passes consecutive clean trips so far, while they are being counted
 * @param needed clean trips that prove the repair
 * @param decided confirmed fixed or recurred
 * @param comeback it was confirmed fixed before, in the same repair attempt
 */
public record Standing(StateName state, OptionalInt passes, int needed, boolean decided, boolean comeback) {

    /** For a person. */
    public Reason said() {
        return switch (state) {
            case AWAITING_REPAIR -> Reason.of(StandingReason.AWAITING_REPAIR);
            case WAITING_FOR_FIRST_TRIP -> Reason.of(StandingReason.WAITING_FOR_FIRST_TRIP);
            case PASSING -> Reason.of(StandingReason.PASSING, Part.count(passes.orElse(0)), Part.count(needed));
            case CONFIRMED_FIXED -> Reason.of(StandingReason.CONFIRMED_FIXED);
            case FAILED_ONCE -> Reason.of(comeback ? StandingReason.FAILED_AFTER_FIXED : StandingReason.FAILED_ONCE);
            case RECURRED -> Reason.of(comeback ? StandingReason.RECURRED_AFTER_FIXED : StandingReason.RECURRED);
        };
    }

    /** The same as the interface answers it. */
    public String words() {
        return Wording.METRIC.words(said());
    }

    public static Standing of(VerificationState state, int needed) {
        StateName name = state.name();
        OptionalInt passes = switch (name) {
            case AWAITING_REPAIR -> OptionalInt.empty();
            case CONFIRMED_FIXED -> OptionalInt.of(needed);
            case WAITING_FOR_FIRST_TRIP, PASSING, FAILED_ONCE, RECURRED -> OptionalInt.of(state.passes());
        };
        boolean comeback = name.isFailure() && state.fixedBefore().isPresent();
        return new Standing(name, passes, needed, name.isDecided(), comeback);
    }
}
