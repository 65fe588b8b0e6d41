package dev.stayfixed.jobs.api;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** Why a job is opened again. */
record ReopenRequest(
        @NotBlank(message = "why the job is reopened") @Size(max = 2000, message = "at most 2000 characters")
        String reason) {}
