package dev.stayfixed.telling.entry;

import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * A new secret for an endpoint.
 *
 * @param overlapHours how long messages are signed with both secrets; 24, if missing
 */
@Schema(name = "RotationRequest")
public record SecretRotation(
        @Nullable @Min(value = 0, message = "0 to 168 hours") @Max(value = 168, message = "0 to 168 hours")
        Integer overlapHours) {

    public Duration overlap() {
        return Duration.ofHours(overlapHours == null ? 24 : overlapHours);
    }
}
