package dev.stayfixed.telling.entry;

import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;

/** A promise. */
@Schema(name = "FollowUpRequest")
public record FollowUpEntry(
        @NotNull(message = "a time with its offset from UTC")
        Instant dueAt,

        @NotBlank(message = "what was promised") @Size(max = 500, message = "at most {max} characters")
        String note) {}
