package dev.stayfixed.telling.api;

import com.fasterxml.jackson.annotation.JsonRawValue;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.delivery.Delivery;
import dev.stayfixed.telling.webhooks.Endpoint;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What the interface says about webhooks. */
final class WebhookAnswers {

    private WebhookAnswers() {}

    /**
     * An endpoint.
     *
     * @param secret only where it was just made
     */
    record EndpointAnswer(
            UUID id,
            String url,
            @Nullable String description,
            List<EventKind> kinds,
            boolean active,
            @Nullable String stoppedBecause,
            Instant createdAt,
            int failuresInARow,
            @Nullable Instant quietUntil,
            @Nullable Instant previousSecretUntil,
            @Nullable String secret) {

        static EndpointAnswer of(Endpoint e) {
            return of(e, null);
        }

        static EndpointAnswer of(Endpoint.WithSecret made) {
            return of(made.endpoint(), made.secret());
        }

        private static EndpointAnswer of(Endpoint e, @Nullable String secret) {
            return new EndpointAnswer(
                    e.id(),
                    e.details().url(),
                    e.details().description().orElse(null),
                    List.copyOf(e.details().kinds()),
                    e.active(),
                    e.stoppedBecause().orElse(null),
                    e.createdAt(),
                    e.failuresInARow(),
                    e.quietUntil().orElse(null),
                    e.previousSecretUntil().orElse(null),
                    secret);
        }
    }

    /**
     * One message to one endpoint.
     *
     * @param eventId also the webhook-id, and the id of the CloudEvent
     */
    record DeliveryAnswer(
            UUID id,
            UUID eventId,
            String kind,
            Delivery.State state,
            boolean byHand,
            int attempts,
            Instant createdAt,
            @Nullable Instant nextAt,
            @Nullable Instant settledAt) {

        static DeliveryAnswer of(Delivery d) {
            return new DeliveryAnswer(
                    d.id(),
                    d.eventId(),
                    d.kind(),
                    d.state(),
                    d.byHand(),
                    d.attempts(),
                    d.createdAt(),
                    d.state() == Delivery.State.PENDING ? d.nextAt() : null,
                    d.settledAt().orElse(null));
        }
    }

    /** One try. */
    record AttemptAnswer(
            int number,
            Instant at,
            long tookMillis,
            String outcome,
            String detail,
            @Nullable String answer) {

        static AttemptAnswer of(Delivery.Attempt a) {
            return new AttemptAnswer(
                    a.number(),
                    a.at(),
                    a.tookMillis(),
                    a.outcome(),
                    a.detail(),
                    a.answer().orElse(null));
        }
    }

    /** A message with what was sent and what was answered. */
    record DeliveryLog(
            DeliveryAnswer delivery,

            @JsonRawValue @Schema(type = "object", description = "the CloudEvent as it is sent")
            String payload,

            List<AttemptAnswer> log) {}
}
