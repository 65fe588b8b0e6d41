package dev.stayfixed.jobs;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.StandingReason;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.VerificationState;
import dev.stayfixed.wording.Wording;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;

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

    /** A place for one of the trips that a verdict takes. */
    public enum Slot {
        PASSED,
        FAILED,
        OPEN
    }

    /**
     * The trips that the verdict takes, as places.
     *
     * @param trips failed ones in a row that confirm the fault
     */
    public List<Slot> slots(int trips) {
        int passed = passes.orElse(0);
        return switch (state) {
            case AWAITING_REPAIR, WAITING_FOR_FIRST_TRIP, PASSING, CONFIRMED_FIXED ->
                filled(Slot.PASSED, passed, needed - passed);
            case FAILED_ONCE -> filled(Slot.FAILED, 1, needed);
            case RECURRED -> filled(Slot.FAILED, trips, 0);
        };
    }

    private static List<Slot> filled(Slot slot, int taken, int open) {
        return Stream.concat(
                        Collections.nCopies(taken, slot).stream(),
                        Collections.nCopies(Math.max(0, open), Slot.OPEN).stream())
                .toList();
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
