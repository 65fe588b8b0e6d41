package dev.stayfixed.web.api;

import dev.stayfixed.jobs.Job;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** What the shop calls a job; what is missing is removed. */
record JobLabels(
        @Nullable @Size(max = 100, message = "at most 100 characters")
        String reference,

        @Nullable @Size(max = 2000, message = "at most 2000 characters")
        String complaint) {

    Job.Labels labels() {
        return new Job.Labels(Words.optional(reference), Words.optional(complaint));
    }
}
