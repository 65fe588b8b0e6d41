package dev.stayfixed.telling.delivery;

import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.random.RandomGenerator;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Writes down what came of a try, and what follows from it. */
@Component
class DeliveryRecord {

    private final StoredDeliveries deliveries;
    private final Durably durably;
    private final ApplicationEventPublisher events;
    private final Clock clock;
    private final RandomGenerator random = RandomGenerator.getDefault();

    DeliveryRecord(StoredDeliveries deliveries, Durably durably, ApplicationEventPublisher events, Clock clock) {
        this.deliveries = deliveries;
        this.durably = durably;
        this.events = events;
        this.clock = clock;
    }

    /**
     * A try and its answer, before it is written down.
     *
     * @param at when it began
     */
    record Tried(UUID delivery, Instant at, long tookMillis, Channel.Answer answer) {}

    /** Writes them down, in one write together with all that follows from them. What is no longer pending needs no note. */
    void record(List<Tried> tries) {
        durably.write(() -> {
            Map<UUID, Delivery> pending =
                    deliveries.pending(tries.stream().map(Tried::delivery).toList());
            List<StoredDeliveries.Noted> accepted = new ArrayList<>();
            for (Tried tried : tries) {
                Delivery delivery = pending.get(tried.delivery());
                if (delivery == null) {
                    continue;
                }
                if (tried.answer() instanceof Channel.Answer.Accepted ok) {
                    accepted.add(noted(delivery, tried, "ACCEPTED", ok.detail(), ok.body()));
                } else {
                    record(delivery, tried);
                }
            }
            deliveries.delivered(accepted, clock.instant());
        });
    }

    private void record(Delivery delivery, Tried tried) {
        if (tried.answer() instanceof Channel.Answer.Refused refused) {
            note(delivery, tried, "REFUSED", refused.detail(), refused.body());
            events.publishEvent(new DeliveryGivenUp(delivery, refused.detail()));
            settle(delivery, Delivery.State.FAILED);
        } else if (tried.answer() instanceof Channel.Answer.NotWanted) {
            settle(delivery, Delivery.State.CANCELLED);
        } else if (tried.answer() instanceof Channel.Answer.NotNow pause) {
            deliveries.waitUntil(delivery.id(), pause.until());
        } else if (tried.answer() instanceof Channel.Answer.TryLater later) {
            retry(delivery, tried, later);
        }
    }

    private void retry(Delivery delivery, Tried tried, Channel.Answer.TryLater later) {
        note(delivery, tried, "TRY_LATER", later.detail(), later.body());
        Optional<Instant> next = RetrySchedule.next(
                delivery.attempts() + 1,
                delivery.firstTriedAt().orElse(tried.at()),
                clock.instant(),
                later.notBefore(),
                random);
        if (next.isEmpty()) {
            events.publishEvent(new DeliveryGivenUp(delivery, later.detail()));
            settle(delivery, Delivery.State.FAILED);
        } else {
            deliveries.waitUntil(delivery.id(), next.get());
        }
    }

    private void note(Delivery delivery, Tried tried, String outcome, String detail, Optional<String> body) {
        deliveries.tried(List.of(noted(delivery, tried, outcome, detail, body)));
    }

    private static StoredDeliveries.Noted noted(
            Delivery delivery, Tried tried, String outcome, String detail, Optional<String> body) {
        return new StoredDeliveries.Noted(
                delivery.id(),
                new Delivery.Attempt(delivery.attempts() + 1, tried.at(), tried.tookMillis(), outcome, detail, body));
    }

    private void settle(Delivery delivery, Delivery.State state) {
        deliveries.settle(delivery.id(), state, clock.instant());
    }
}
