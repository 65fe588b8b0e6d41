package dev.stayfixed.telling.webhooks;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.annotation.JsonRawValue;
import dev.stayfixed.telling.Event;
import dev.stayfixed.telling.ServiceAddress;
import java.net.URI;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

/**
 * An event in the JSON format of CloudEvents 1.0, structured mode.
 *
 * @param source the service that says so
 * @param subject what it is about, relative to the source
 * @param data JSON
 */
@JsonPropertyOrder({"specversion", "id", "source", "type", "subject", "time", "datacontenttype", "data"})
@JsonInclude(JsonInclude.Include.NON_NULL)
record CloudEvent(
        String specversion,
        String id,
        URI source,
        String type,
        @Nullable String subject,
        Instant time,
        String datacontenttype,
        @JsonRawValue String data) {

    static final String MEDIA_TYPE = "application/cloudevents+json; charset=UTF-8";

    static CloudEvent of(Event event, ServiceAddress service) {
        return new CloudEvent(
                "1.0",
                event.id().toString(),
                service.of("/api/v1"),
                event.kind().type(),
                event.jobId()
                        .map(job -> "jobs/" + job
                                + event.faultId().map(f -> "/faults/" + f).orElse(""))
                        .orElse(null),
                event.occurredAt(),
                "application/json",
                event.content());
    }

    String text(JsonMapper json) {
        return json.writeValueAsString(this);
    }
}
