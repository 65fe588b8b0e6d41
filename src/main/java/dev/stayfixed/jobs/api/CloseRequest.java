package dev.stayfixed.jobs.api;

import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** Why a job is closed; needed while a fault is not confirmed fixed. */
record CloseRequest(
        @Nullable @Size(max = 2000, message = "at most 2000 characters")
        String reason) {}
