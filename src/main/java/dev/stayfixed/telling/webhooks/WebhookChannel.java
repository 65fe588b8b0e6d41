package dev.stayfixed.telling.webhooks;

import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.delivery.Channel;
import dev.stayfixed.telling.delivery.Delivery;
import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** Sends one webhook and reads its receiver's answer. */
@Component
class WebhookChannel implements Channel {

    static final String NAME = "webhook";

    private static final String KEY_LOST =
            "not sent: the secret of this endpoint was sealed with another key than the service has now"
                    + " (stayfixed.secret-key); give the service that key again, or make a new secret for the endpoint";

    private static final int GONE = 410;
    private static final int TOO_MANY_REQUESTS = 429;
    private static final int UNAVAILABLE = 503;

    private final StoredEndpoints endpoints;
    private final Webhooks webhooks;
    private final Poster poster;
    private final Durably durably;
    private final Clock clock;

    WebhookChannel(StoredEndpoints endpoints, Webhooks webhooks, Poster poster, Durably durably, Clock clock) {
        this.endpoints = endpoints;
        this.webhooks = webhooks;
        this.poster = poster;
        this.durably = durably;
        this.clock = clock;
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public Answer send(Delivery delivery) {
        Optional<StoredEndpoints.Signing> found = durably.read(() -> endpoints.signing(delivery.target()));
        if (found.isEmpty() || (!found.get().endpoint().active() && !delivery.byHand())) {
            return new Answer.NotWanted("the endpoint takes no more messages");
        }
        Endpoint endpoint = found.get().endpoint();
        Optional<Instant> quiet = endpoint.quietUntil().filter(until -> until.isAfter(clock.instant()));
        if (quiet.isPresent() && !delivery.byHand()) {
            return new Answer.NotNow(quiet.get());
        }
        Optional<Secrets> secrets = found.get().secrets();
        if (secrets.isEmpty()) {
            return new Answer.TryLater(KEY_LOST, Optional.empty(), Optional.empty());
        }
        Map<String, String> headers = headers(secrets.get(), delivery);
        return judge(endpoint, poster.post(endpoint.details().url(), headers, delivery.payload()), delivery);
    }

    private Map<String, String> headers(Secrets secrets, Delivery delivery) {
        String id = delivery.eventId().toString();
        Instant now = clock.instant();
        return Map.of(
                "webhook-id",
                id,
                "webhook-timestamp",
                Long.toString(now.getEpochSecond()),
                "webhook-signature",
                Signature.of(secrets, id, now, delivery.payload()));
    }

    private Answer judge(Endpoint endpoint, Poster.Result result, Delivery delivery) {
        Optional<Instant> askedFor = Optional.empty();
        if (result instanceof Poster.Answered answered) {
            if (answered.status() / 100 == 2) {
                webhooks.answered(endpoint, true, Optional.empty());
                return new Answer.Accepted("answered " + answered.status(), Optional.of(answered.body()));
            }
            if (answered.status() == GONE) {
                webhooks.gone(delivery, "it answered 410: it is gone for good");
                return new Answer.Refused("answered 410: it is gone for good", Optional.of(answered.body()));
            }
            if (answered.status() == TOO_MANY_REQUESTS || answered.status() == UNAVAILABLE) {
                askedFor = RetryAfter.of(answered.retryAfter(), clock.instant());
            }
        }
        if (!delivery.kind().equals(EventKind.TEST.name())) {
            webhooks.answered(endpoint, false, askedFor);
        }
        return result.failure(askedFor);
    }
}
