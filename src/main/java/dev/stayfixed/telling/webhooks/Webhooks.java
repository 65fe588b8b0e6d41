package dev.stayfixed.telling.webhooks;

import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.telling.Announcer;
import dev.stayfixed.telling.Event;
import dev.stayfixed.telling.EventWritten;
import dev.stayfixed.telling.NewsReason;
import dev.stayfixed.telling.ServiceAddress;
import dev.stayfixed.telling.delivery.Delivery;
import dev.stayfixed.telling.delivery.Outbox;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import tools.jackson.databind.json.JsonMapper;

/** The endpoints of a shop, their secrets, and the log of what was sent to them. */
@Service
public class Webhooks {

    /** Endpoints that one shop can have. */
    public static final int MOST = 20;

    private final StoredEndpoints endpoints;
    private final Targets targets;
    private final Outbox outbox;
    private final Announcer announcer;
    private final Durably durably;
    private final JsonMapper json;
    private final Clock clock;
    private final ServiceAddress service;

    Webhooks(
            StoredEndpoints endpoints,
            Targets targets,
            Outbox outbox,
            Announcer announcer,
            Durably durably,
            JsonMapper json,
            Clock clock,
            ServiceAddress service) {
        this.endpoints = endpoints;
        this.targets = targets;
        this.outbox = outbox;
        this.announcer = announcer;
        this.durably = durably;
        this.json = json;
        this.clock = clock;
        this.service = service;
    }

    /**
     * Takes an endpoint into the shop's list.
     *
     * @throws Refused when nothing may be sent to its address
     */
    public Endpoint.WithSecret add(Endpoint.Details details) {
        check(details);
        return durably.write(() -> {
            if (endpoints.all().size() >= MOST) {
                throw Refused.content(new Mistake(
                        "", MOST + " endpoints already", "at most " + MOST + "; delete one that is no longer used"));
            }
            UUID id = UUID.randomUUID();
            String secret = Secrets.make();
            endpoints.insert(id, details, secret, clock.instant());
            return new Endpoint.WithSecret(known(id), secret);
        });
    }

    /** Oldest first. */
    public List<Endpoint> all() {
        return durably.read(endpoints::all);
    }

    public Endpoint get(UUID id) {
        return durably.read(() -> known(id));
    }

    /** Changes it; whatever stopped it is forgotten. */
    public Endpoint change(UUID id, IfMatch ifMatch, Endpoint.Details details, boolean active) {
        check(details);
        return durably.write(() -> {
            ifMatch.check(held(id).version());
            endpoints.describe(id, details, active);
            if (!active) {
                outbox.cancelAllTo(WebhookChannel.NAME, id);
            }
            return known(id);
        });
    }

    /** Deletes it, its log, and what was still to be sent to it. */
    public void delete(UUID id, IfMatch ifMatch) {
        durably.write(() -> {
            ifMatch.check(held(id).version());
            outbox.forget(WebhookChannel.NAME, id);
            endpoints.delete(id);
        });
    }

    /**
     * A new secret.
     *
     * @param overlap so long messages are signed with both
     */
    public Endpoint.WithSecret rotate(UUID id, Duration overlap) {
        return durably.write(() -> {
            held(id);
            String secret = Secrets.make();
            endpoints.rotate(id, secret, clock.instant().plus(overlap));
            return new Endpoint.WithSecret(known(id), secret);
        });
    }

    /** Sends a test event, to a stopped endpoint too. */
    public Delivery test(UUID id) {
        return durably.write(() -> {
            held(id);
            Event event = announcer.test(Reason.of(NewsReason.TEST_OF_ENDPOINT));
            UUID delivery = outbox.add(draft(id, event, true));
            return outbox.get(WebhookChannel.NAME, id, delivery);
        });
    }

    /** Sends a message once more under its own id, to a stopped endpoint too. */
    public Delivery resend(UUID id, UUID deliveryId) {
        return durably.write(() -> {
            held(id);
            UUID again = outbox.resend(WebhookChannel.NAME, id, deliveryId);
            return outbox.get(WebhookChannel.NAME, id, again);
        });
    }

    public Page<Delivery> log(UUID id, Optional<Delivery.State> state, Page.Request page) {
        get(id);
        return outbox.log(WebhookChannel.NAME, id, state, page);
    }

    public Delivery delivery(UUID id, UUID deliveryId) {
        return outbox.get(WebhookChannel.NAME, id, deliveryId);
    }

    public List<Delivery.Attempt> attempts(UUID deliveryId) {
        return outbox.attempts(deliveryId);
    }

    @EventListener
    void on(EventWritten written) {
        Event event = written.event();
        endpoints.all().stream()
                .filter(e -> e.active() && e.details().kinds().contains(event.kind()))
                .forEach(e -> outbox.add(draft(e.id(), event, false)));
    }

    private Delivery.Draft draft(UUID endpointId, Event event, boolean byHand) {
        UUID about = event.jobId().orElse(event.id());
        return new Delivery.Draft(
                WebhookChannel.NAME,
                endpointId,
                "w:" + endpointId + ":" + about,
                event.id(),
                event.jobId(),
                event.kind().name(),
                CloudEvent.of(event, service).text(json),
                byHand);
    }

    private void check(Endpoint.Details details) {
        targets.flaw(details.url()).ifPresent(expected -> {
            throw Refused.content(new Mistake("url", details.url(), expected));
        });
    }

    private Endpoint held(UUID id) {
        return endpoints.lock(id).orElseThrow(() -> Refused.notFound("webhook", id));
    }

    private Endpoint known(UUID id) {
        return endpoints.find(id).orElseThrow(() -> Refused.notFound("webhook", id));
    }

    /** Stops an endpoint that is gone, and everything that waits for it but the delivery that learned of it. */
    void gone(Delivery delivery, String because) {
        durably.write(() -> {
            endpoints.stop(delivery.target(), because);
            outbox.cancelOthersTo(delivery);
        });
    }

    /** Remembers how the endpoint answered, so that all deliveries leave it in peace where that is called for. */
    void answered(Endpoint endpoint, boolean well, Optional<Instant> askedFor) {
        if (well && endpoint.failuresInARow() == 0 && endpoint.quietUntil().isEmpty()) {
            return;
        }
        int failures = well ? 0 : endpoint.failuresInARow() + 1;
        Instant pause = clock.instant().plusSeconds(Math.min(5L * failures, 300));
        Instant quiet = well ? null : askedFor.filter(pause::isBefore).orElse(pause);
        durably.write(() -> endpoints.answered(endpoint.id(), failures, quiet));
    }
}
