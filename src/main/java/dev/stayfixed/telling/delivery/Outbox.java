package dev.stayfixed.telling.delivery;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** Everything that is to be sent, and the log of what was sent. */
@Service
public class Outbox {

    /** How long the log keeps a settled delivery. */
    static final Duration KEPT = Duration.ofDays(90);

    private final StoredDeliveries deliveries;
    private final Alarms alarms;
    private final Durably durably;
    private final CurrentShop shop;
    private final Clock clock;

    Outbox(StoredDeliveries deliveries, Alarms alarms, Durably durably, CurrentShop shop, Clock clock) {
        this.deliveries = deliveries;
        this.alarms = alarms;
        this.durably = durably;
        this.shop = shop;
        this.clock = clock;
    }

    /** Adds a message. In a running write, it exists if and only if that write succeeds. */
    public UUID add(Delivery.Draft draft) {
        return durably.write(() -> {
            UUID id = UUID.randomUUID();
            deliveries.insert(id, draft, clock.instant());
            alarms.set(Addressee.of(shop.id(), draft), clock.instant());
            return id;
        });
    }

    /** Sends it once more, with the same event id; one that still waits is tried now. */
    public UUID resend(String channel, UUID target, UUID id) {
        return durably.write(() -> {
            Delivery delivery = known(channel, target, id);
            if (delivery.state() != Delivery.State.PENDING) {
                return add(delivery.again());
            }
            deliveries.waitUntil(id, clock.instant());
            alarms.set(Addressee.of(shop.id(), delivery), clock.instant());
            return id;
        });
    }

    public void cancelAllTo(String channel, UUID target) {
        durably.write(() -> deliveries.cancelTarget(channel, target, clock.instant()));
    }

    /** Cancels what waits for the same receiver, but not this one. */
    public void cancelOthersTo(Delivery but) {
        durably.write(() -> deliveries.cancelOthers(but, clock.instant()));
    }

    /** Cancels what was not sent yet of one kind about one job. */
    public void cancelKind(UUID jobId, String kind) {
        durably.write(() -> deliveries.cancelKind(jobId, kind, clock.instant()));
    }

    /** Forgets a receiver and its log. */
    public void forget(String channel, UUID target) {
        durably.write(() -> deliveries.deleteTarget(channel, target));
    }

    public Delivery get(String channel, UUID target, UUID id) {
        return durably.read(() -> known(channel, target, id));
    }

    /** Since when the oldest message of the shop waits that is neither delivered nor given up. */
    public Optional<Instant> oldestPending() {
        return durably.read(deliveries::oldestPending);
    }

    public List<Delivery.Attempt> attempts(UUID id) {
        return durably.read(() -> deliveries.attempts(id));
    }

    /** Deliveries to a receiver, the latest first. */
    public Page<Delivery> log(String channel, UUID target, Optional<Delivery.State> state, Page.Request page) {
        List<Delivery.State> states = state.map(List::of).orElse(List.of(Delivery.State.values()));
        return durably.read(() -> Page.of(
                deliveries.page(channel, target, states, page), page, d -> new Page.Position(d.createdAt(), d.id())));
    }

    /** Drops what was settled long ago. */
    int tidy() {
        return durably.write(
                () -> deliveries.deleteSettledBefore(clock.instant().minus(KEPT)));
    }

    private Delivery known(String channel, UUID target, UUID id) {
        return deliveries
                .find(id)
                .filter(d -> d.channel().equals(channel) && d.target().equals(target))
                .orElseThrow(() -> Refused.notFound("delivery", id));
    }
}
