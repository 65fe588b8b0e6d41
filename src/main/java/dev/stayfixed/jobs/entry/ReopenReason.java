package dev.stayfixed.jobs.entry;

import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** Why a job is opened again. */
@Schema(name = "ReopenRequest")
public record ReopenReason(
        @NotBlank(message = "why the job is reopened")
        @Size(max = EntryLimits.TEXT, message = "at most {max} characters")
        String reason) {}
