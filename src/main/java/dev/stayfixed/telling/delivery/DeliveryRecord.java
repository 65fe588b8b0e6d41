package dev.stayfixed.telling.delivery;

import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.random.RandomGenerator;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Writes down what came of a try, and what follows from it. */
@Component
class DeliveryRecord {

    private final StoredDeliveries deliveries;
    private final Alarms alarms;
    private final Durably durably;
    private final ApplicationEventPublisher events;
    private final Clock clock;
    private final RandomGenerator random = RandomGenerator.getDefault();

    DeliveryRecord(
            StoredDeliveries deliveries,
            Alarms alarms,
            Durably durably,
            ApplicationEventPublisher events,
            Clock clock) {
        this.deliveries = deliveries;
        this.alarms = alarms;
        this.durably = durably;
        this.events = events;
        this.clock = clock;
    }

    /**
     * A try and its answer, before it is written down.
     *
     * @param at when it began
     */
    record Tried(Instant at, long tookMillis, Channel.Answer answer) {}

    /**
     * Writes it down, in one write together with all that follows from it; the time of the next try, empty when there is none. Waking
     * up the next of the stream comes after that write: no trouble with it may undo the note, for that would send again.
     */
    Optional<Instant> record(UUID id, Tried tried) {
        Optional<Instant> again = durably.write(() -> deliveries
                .find(id)
                .filter(d -> d.state() == Delivery.State.PENDING)
                .flatMap(d -> record(d, tried)));
        if (again.isEmpty()) {
            durably.read(() -> deliveries.find(id).flatMap(d -> deliveries.head(d.stream())))
                    .ifPresent(next -> alarms.hasten(next.id(), clock.instant()));
        }
        return again;
    }

    private Optional<Instant> record(Delivery delivery, Tried tried) {
        if (tried.answer() instanceof Channel.Answer.Accepted ok) {
            note(delivery, tried, "ACCEPTED", ok.detail(), ok.body());
            return settle(delivery, Delivery.State.DELIVERED);
        }
        if (tried.answer() instanceof Channel.Answer.Refused refused) {
            note(delivery, tried, "REFUSED", refused.detail(), refused.body());
            events.publishEvent(new DeliveryGivenUp(delivery, refused.detail()));
            return settle(delivery, Delivery.State.FAILED);
        }
        if (tried.answer() instanceof Channel.Answer.NotWanted) {
            return settle(delivery, Delivery.State.CANCELLED);
        }
        if (tried.answer() instanceof Channel.Answer.NotNow pause) {
            deliveries.waitUntil(delivery.id(), pause.until());
            return Optional.of(pause.until());
        }
        return retry(delivery, tried, (Channel.Answer.TryLater) tried.answer());
    }

    private Optional<Instant> retry(Delivery delivery, Tried tried, Channel.Answer.TryLater later) {
        note(delivery, tried, "TRY_LATER", later.detail(), later.body());
        Optional<Instant> next = RetrySchedule.next(
                delivery.attempts() + 1,
                delivery.firstTriedAt().orElse(tried.at()),
                clock.instant(),
                later.notBefore(),
                random);
        if (next.isEmpty()) {
            events.publishEvent(new DeliveryGivenUp(delivery, later.detail()));
            return settle(delivery, Delivery.State.FAILED);
        }
        deliveries.waitUntil(delivery.id(), next.get());
        return next;
    }

    private void note(Delivery delivery, Tried tried, String outcome, String detail, Optional<String> body) {
        deliveries.tried(
                delivery,
                new Delivery.Attempt(delivery.attempts() + 1, tried.at(), tried.tookMillis(), outcome, detail, body));
    }

    private Optional<Instant> settle(Delivery delivery, Delivery.State state) {
        deliveries.settle(delivery.id(), state, clock.instant());
        return Optional.empty();
    }
}
