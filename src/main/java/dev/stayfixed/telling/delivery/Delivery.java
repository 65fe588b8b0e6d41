package dev.stayfixed.telling.delivery;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * One message to one receiver.
 *
 * @param target the receiver's id in its channel
 * @param stream deliveries of one stream go to one receiver, in the order in which they were added, one at a time
 * @param eventId what the message is about; the same in every repetition
 * @param byHand somebody asked for this very delivery
 * @param nextAt when it is due, while it is pending
 * @param firstTriedAt from then on the three days count
 */
public record Delivery(
        UUID id,
        String channel,
        UUID target,
        String stream,
        UUID eventId,
        Optional<UUID> jobId,
        String kind,
        String payload,
        State state,
        boolean byHand,
        int attempts,
        Instant createdAt,
        Optional<Instant> firstTriedAt,
        Instant nextAt,
        Optional<Instant> settledAt) {

    /** How far it is. */
    public enum State {
        PENDING,
        DELIVERED,
        /** Refused for good, or not accepted within three days. */
        FAILED,
        /** No longer wanted. */
        CANCELLED
    }

    /** What is added to the outbox. */
    public record Draft(
            String channel,
            UUID target,
            String stream,
            UUID eventId,
            Optional<UUID> jobId,
            String kind,
            String payload,
            boolean byHand) {}

    /**
     * One try.
     *
     * @param number from 1
     * @param tookMillis until the answer was there
     * @param answer the beginning of what the receiver said
     */
    public record Attempt(
            int number, Instant at, long tookMillis, String outcome, String detail, Optional<String> answer) {}

    /** The same message once more. */
    Draft again() {
        return new Draft(channel, target, stream, eventId, jobId, kind, payload, true);
    }
}
