package dev.stayfixed.intake.entry;

import dev.stayfixed.archive.LogMappingForm;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A mapping to be saved.
 *
 * @param headers of the log, all of them: later logs are found by them
 * @param vehicleId where it is for the logs of this vehicle only; left out for those of all
 */
@Schema(name = "Request")
public record LogMappingEntry(
        @NotBlank(message = "what the shop calls it") @Size(max = 200)
        String name,

        @NotEmpty(message = "all headers of the log") @Size(max = 1000, message = "at most {max} headers")
        List<@NotNull @Size(max = 4096) String> headers,

        @NotNull(message = "time column and columns") @Valid LogMappingForm mapping,

        @Nullable UUID vehicleId) {}
