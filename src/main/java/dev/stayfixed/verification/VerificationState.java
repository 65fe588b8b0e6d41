package dev.stayfixed.verification;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.time.Instant;
import java.util.Optional;

/**
 * Where a repaired fault stands. Each state is a record of exactly what is known in it. What it becomes is decided by all histories
 * together, in {@link #given}.
 */
public sealed interface VerificationState {

    /** How the counting goes for this fault. */
    record Count(Trips trips, int requiredPasses) {}

    /**
     * Where it stands, given every history that fits: recurred and confirmed fixed exactly when all agree; else what the likely ones
     * share, and where they share nothing new, what was said before.
     *
     * @param counted recorded clean trips since the last failure, for a shop that asks for more than the fault needs
     * @param when of the record that was read last
     */
    default VerificationState given(Histories histories, Count count, int counted, Instant when) {
        if (histories.all(UnitState::recurred)) {
            return new Recurred(when, fixedBefore());
        }
        boolean passed = histories.certainPasses() >= count.trips().count();
        if (passed && (count.requiredPasses() == count.trips().count() || counted >= count.requiredPasses())) {
            return new ConfirmedFixed(when);
        }
        Histories likely = histories.plainest();
        if (likely.all(UnitState::failedSoFar)) {
            return new FailedOnce(when, fixedBefore());
        }
        int passes = Math.min(
                count.requiredPasses() - 1,
                count.requiredPasses() == count.trips().count() ? likely.certainPasses() : counted);
        return likely.certainPasses() > 0 && passes > 0 ? new Passing(passes, count.requiredPasses()) : otherwise();
    }

    /** Where it stands if the histories share nothing new. */
    default VerificationState otherwise() {
        return this;
    }

    /** When it had been confirmed fixed in this attempt, before it failed again. */
    default Optional<Instant> fixedBefore() {
        return Optional.empty();
    }

    /** Codes were cleared or memory was lost: what the control unit had counted is gone, and so is our count. */
    VerificationState restarted();

    /** Where it stands. */
    Reason said();

    StateName name();

    /** Consecutive clean trips so far, while they are being counted; else none. */
    default int passes() {
        return 0;
    }

    /** Nothing was repaired yet. */
    record AwaitingRepair() implements VerificationState {
        @Override
        public VerificationState given(Histories histories, Count count, int counted, Instant when) {
            return this;
        }

        @Override
        public VerificationState restarted() {
            return this;
        }

        @Override
        public StateName name() {
            return StateName.AWAITING_REPAIR;
        }

        @Override
        public Reason said() {
            return Reason.of(StandingReason.AWAITING_REPAIR);
        }
    }

    /** No trip has counted since the repair, or since the codes were last cleared. */
    record WaitingForFirstTrip() implements VerificationState {
        @Override
        public VerificationState restarted() {
            return this;
        }

        @Override
        public StateName name() {
            return StateName.WAITING_FOR_FIRST_TRIP;
        }

        @Override
        public Reason said() {
            return Reason.of(StandingReason.WAITING_FOR_FIRST_TRIP);
        }
    }

    /**
     * Trips have passed since the last failure or restart, and more are needed.
     *
     * @param passes consecutive passed trips, at least 1 and fewer than needed
     */
    record Passing(int passes, int needed) implements VerificationState {

        @Override
        public VerificationState restarted() {
            return new WaitingForFirstTrip();
        }

        @Override
        public StateName name() {
            return StateName.PASSING;
        }

        @Override
        public Reason said() {
            return Reason.of(StandingReason.PASSING, Part.count(passes), Part.count(needed));
        }
    }

    /**
     * As many consecutive trips passed as this fault needs.
     *
     * @param since start of the drive with the last pass that was needed
     */
    record ConfirmedFixed(Instant since) implements VerificationState {
        /** It stays until every history has a later failure. */
        @Override
        public VerificationState given(Histories histories, Count count, int counted, Instant when) {
            boolean over = histories.all(UnitState::fell) || histories.all(UnitState::recurred);
            return over ? VerificationState.super.given(histories, count, counted, when) : this;
        }

        /** It failed, and what the control unit knew of that was cleared: neither fixed any more nor failed once. */
        @Override
        public VerificationState otherwise() {
            return new WaitingForFirstTrip();
        }

        @Override
        public Optional<Instant> fixedBefore() {
            return Optional.of(since);
        }

        @Override
        public VerificationState restarted() {
            return this;
        }

        @Override
        public StateName name() {
            return StateName.CONFIRMED_FIXED;
        }

        @Override
        public Reason said() {
            return Reason.of(StandingReason.CONFIRMED_FIXED);
        }
    }

    /**
     * A two-trip fault failed on one trip: its next trip decides.
     *
     * @param fixedBefore it had been confirmed fixed in this attempt: a comeback
     */
    record FailedOnce(Instant since, Optional<Instant> fixedBefore) implements VerificationState {
        @Override
        public VerificationState given(Histories histories, Count count, int counted, Instant when) {
            VerificationState next = VerificationState.super.given(histories, count, counted, when);
            return next instanceof FailedOnce ? this : next;
        }

        @Override
        public VerificationState restarted() {
            return new WaitingForFirstTrip();
        }

        @Override
        public StateName name() {
            return StateName.FAILED_ONCE;
        }

        @Override
        public Reason said() {
            return Reason.of(fixedBefore.isPresent() ? StandingReason.FAILED_AFTER_FIXED : StandingReason.FAILED_ONCE);
        }
    }

    /**
     * The fault is back. This attempt is over; a new repair opens the next one.
     *
     * @param fixedBefore it had been confirmed fixed in this attempt: a comeback
     */
    record Recurred(Instant since, Optional<Instant> fixedBefore) implements VerificationState {
        @Override
        public VerificationState given(Histories histories, Count count, int counted, Instant when) {
            return this;
        }

        @Override
        public VerificationState restarted() {
            return this;
        }

        @Override
        public StateName name() {
            return StateName.RECURRED;
        }

        @Override
        public Reason said() {
            return Reason.of(fixedBefore.isPresent() ? StandingReason.RECURRED_AFTER_FIXED : StandingReason.RECURRED);
        }
    }
}
