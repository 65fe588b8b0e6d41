package dev.stayfixed.verification;

import java.time.Instant;
import java.util.Optional;

/**
 * Where a repaired fault stands. Each state is a record of exactly what is known in it, and makes its own step: a state that forgets
 * one does not compile.
 */
public sealed interface VerificationState {

    /** How the counting goes for this fault. */
    record Count(Trips trips, int requiredPasses) {}

    VerificationState passed(Count count, Instant when);

    /** One failed trip; {@code confirmed} when the control unit confirmed the code in it. */
    VerificationState failed(Count count, Instant when, boolean confirmed);

    /** Codes were cleared or memory was lost: what the control unit had counted is gone, and so is our count. */
    VerificationState restarted();

    /** Where it stands, in words of the trade. */
    String words();

    /** Nothing was repaired yet. */
    record AwaitingRepair() implements VerificationState {
        @Override
        public VerificationState passed(Count count, Instant when) {
            return this;
        }

        @Override
        public VerificationState failed(Count count, Instant when, boolean confirmed) {
            return this;
        }

        @Override
        public VerificationState restarted() {
            return this;
        }

        @Override
        public String words() {
            return "waiting for a repair";
        }
    }

    /** No trip has counted since the repair, or since the codes were last cleared. */
    record WaitingForFirstTrip() implements VerificationState {
        @Override
        public VerificationState passed(Count count, Instant when) {
            return Passing.step(1, count, when);
        }

        @Override
        public VerificationState failed(Count count, Instant when, boolean confirmed) {
            return FailedOnce.step(count, when, confirmed, Optional.empty());
        }

        @Override
        public VerificationState restarted() {
            return this;
        }

        @Override
        public String words() {
            return "waiting for its first trip";
        }
    }

    /**
     * Trips have passed since the last failure or restart, and more are needed.
     *
     * @param passes consecutive passed trips, at least 1 and fewer than needed
     */
    record Passing(int passes, int needed) implements VerificationState {

        static VerificationState step(int passes, Count count, Instant when) {
            return passes >= count.requiredPasses()
                    ? new ConfirmedFixed(when)
                    : new Passing(passes, count.requiredPasses());
        }

        @Override
        public VerificationState passed(Count count, Instant when) {
            return step(passes + 1, count, when);
        }

        @Override
        public VerificationState failed(Count count, Instant when, boolean confirmed) {
            return FailedOnce.step(count, when, confirmed, Optional.empty());
        }

        @Override
        public VerificationState restarted() {
            return new WaitingForFirstTrip();
        }

        @Override
        public String words() {
            return "%d of %d clean trips".formatted(passes, needed);
        }
    }

    /**
     * As many consecutive trips passed as this fault needs.
     *
     * @param since start of the drive with the last pass that was needed
     */
    record ConfirmedFixed(Instant since) implements VerificationState {
        @Override
        public VerificationState passed(Count count, Instant when) {
            return this;
        }

        @Override
        public VerificationState failed(Count count, Instant when, boolean confirmed) {
            return FailedOnce.step(count, when, confirmed, Optional.of(since));
        }

        @Override
        public VerificationState restarted() {
            return this;
        }

        @Override
        public String words() {
            return "confirmed fixed";
        }
    }

    /**
     * A two-trip fault failed on one trip: its next trip decides.
     *
     * @param fixedBefore it had been confirmed fixed in this attempt: a comeback
     */
    record FailedOnce(Instant since, Optional<Instant> fixedBefore) implements VerificationState {

        static VerificationState step(Count count, Instant when, boolean confirmed, Optional<Instant> fixedBefore) {
            return confirmed || count.trips() == Trips.ONE
                    ? new Recurred(when, fixedBefore)
                    : new FailedOnce(when, fixedBefore);
        }

        @Override
        public VerificationState passed(Count count, Instant when) {
            return Passing.step(1, count, when);
        }

        @Override
        public VerificationState failed(Count count, Instant when, boolean confirmed) {
            return new Recurred(when, fixedBefore);
        }

        @Override
        public VerificationState restarted() {
            return new WaitingForFirstTrip();
        }

        @Override
        public String words() {
            return fixedBefore.isPresent() ? "came back: failed once after it was confirmed fixed" : "failed once";
        }
    }

    /**
     * The fault is back. This attempt is over; a new repair opens the next one.
     *
     * @param fixedBefore it had been confirmed fixed in this attempt: a comeback
     */
    record Recurred(Instant since, Optional<Instant> fixedBefore) implements VerificationState {
        @Override
        public VerificationState passed(Count count, Instant when) {
            return this;
        }

        @Override
        public VerificationState failed(Count count, Instant when, boolean confirmed) {
            return this;
        }

        @Override
        public VerificationState restarted() {
            return this;
        }

        @Override
        public String words() {
            return fixedBefore.isPresent() ? "came back: recurred after it was confirmed fixed" : "recurred";
        }
    }
}
