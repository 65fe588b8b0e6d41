package dev.stayfixed.telling.entry;

import dev.stayfixed.platform.Given;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.webhooks.Endpoint;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An endpoint.
 *
 * @param kinds all, if missing
 * @param active true, if missing; a stopped endpoint starts again with true
 */
@Schema(name = "EndpointRequest")
public record EndpointEntry(
        @NotBlank(message = "an absolute https address") @Size(max = 2000, message = "at most {max} characters")
        String url,

        @Nullable @Size(max = 200, message = "at most {max} characters")
        String description,

        @Nullable List<EventKind> kinds,
        @Nullable Boolean active) {

    public Endpoint.Details details() {
        return new Endpoint.Details(
                url.strip(),
                Given.optional(description),
                kinds == null ? EventKind.forWebhooks() : Choice.only("kinds", kinds, EventKind.forWebhooks()));
    }
}
