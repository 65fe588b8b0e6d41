package dev.stayfixed.telling.api;

import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Page;
import dev.stayfixed.telling.api.WebhookAnswers.AttemptAnswer;
import dev.stayfixed.telling.api.WebhookAnswers.DeliveryAnswer;
import dev.stayfixed.telling.api.WebhookAnswers.DeliveryLog;
import dev.stayfixed.telling.api.WebhookAnswers.EndpointAnswer;
import dev.stayfixed.telling.delivery.Delivery;
import dev.stayfixed.telling.entry.EndpointEntry;
import dev.stayfixed.telling.entry.SecretRotation;
import dev.stayfixed.telling.webhooks.Endpoint;
import dev.stayfixed.telling.webhooks.Webhooks;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.PageAnswer;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.net.URI;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Webhooks", description = "CloudEvents 1.0, signed by Standard Webhooks, tried for three days")
@RestController
@RequestMapping(Link.BASE + "/webhooks")
class WebhookController {

    private final Webhooks webhooks;

    WebhookController(Webhooks webhooks) {
        this.webhooks = webhooks;
    }

    @Operation(summary = "Add an endpoint; the answer holds its secret, which is shown this once")
    @PostMapping
    ResponseEntity<EndpointAnswer> add(@Valid @RequestBody EndpointEntry request) {
        Endpoint.WithSecret made = webhooks.add(request.details());
        return ResponseEntity.created(
                        URI.create(Link.to("webhooks", made.endpoint().id()).href()))
                .eTag(IfMatch.tag(made.endpoint().version()))
                .body(EndpointAnswer.of(made));
    }

    @Operation(summary = "All endpoints")
    @GetMapping
    PageAnswer<EndpointAnswer> all() {
        return new PageAnswer<>(webhooks.all().stream().map(EndpointAnswer::of).toList(), null);
    }

    @Operation(summary = "One endpoint")
    @GetMapping("/{id}")
    ResponseEntity<EndpointAnswer> get(@PathVariable UUID id) {
        return answer(webhooks.get(id));
    }

    @Operation(summary = "Change an endpoint, stop it, or start it again")
    @PutMapping("/{id}")
    ResponseEntity<EndpointAnswer> change(
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody EndpointEntry request) {
        boolean active = request.active() == null || request.active();
        return answer(webhooks.change(id, IfMatch.of(ifMatch), request.details(), active));
    }

    @Operation(summary = "Delete an endpoint with its log")
    @DeleteMapping("/{id}")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void delete(@PathVariable UUID id, @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch) {
        webhooks.delete(id, IfMatch.of(ifMatch));
    }

    @Operation(summary = "Make a new secret; the one before it stays valid for a while")
    @PostMapping("/{id}/rotate-secret")
    EndpointAnswer rotate(
            @PathVariable UUID id, @Valid @RequestBody(required = false) @Nullable SecretRotation request) {
        Duration overlap = (request == null ? new SecretRotation(null) : request).overlap();
        return EndpointAnswer.of(webhooks.rotate(id, overlap));
    }

    @Operation(summary = "Send a test event")
    @PostMapping("/{id}/test")
    @ResponseStatus(HttpStatus.ACCEPTED)
    DeliveryAnswer test(@PathVariable UUID id) {
        return DeliveryAnswer.of(webhooks.test(id));
    }

    @Operation(summary = "What was sent, the latest first")
    @GetMapping("/{id}/deliveries")
    PageAnswer<DeliveryAnswer> log(
            @PathVariable UUID id,
            @RequestParam(required = false) Delivery.@Nullable State state,
            @RequestParam(required = false) @Nullable Integer limit,
            @RequestParam(required = false) @Nullable String cursor) {
        return PageAnswer.of(
                webhooks.log(id, Optional.ofNullable(state), Page.Request.of(limit, cursor)), DeliveryAnswer::of);
    }

    @Operation(summary = "One delivery: what was sent, and each answer")
    @GetMapping("/{id}/deliveries/{deliveryId}")
    DeliveryLog delivery(@PathVariable UUID id, @PathVariable UUID deliveryId) {
        Delivery delivery = webhooks.delivery(id, deliveryId);
        return new DeliveryLog(
                DeliveryAnswer.of(delivery),
                delivery.payload(),
                webhooks.attempts(deliveryId).stream().map(AttemptAnswer::of).toList());
    }

    @Operation(summary = "Send it once more, under the same event id")
    @PostMapping("/{id}/deliveries/{deliveryId}/resend")
    @ResponseStatus(HttpStatus.ACCEPTED)
    DeliveryAnswer resend(@PathVariable UUID id, @PathVariable UUID deliveryId) {
        return DeliveryAnswer.of(webhooks.resend(id, deliveryId));
    }

    private static ResponseEntity<EndpointAnswer> answer(Endpoint endpoint) {
        return ResponseEntity.ok().eTag(IfMatch.tag(endpoint.version())).body(EndpointAnswer.of(endpoint));
    }
}
