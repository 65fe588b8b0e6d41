package dev.stayfixed.jobs.api;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.web.api.Words;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** What the shop calls a job; what is missing is removed. */
record JobLabels(
        @Nullable @Size(max = 100, message = "at most 100 characters")
        String reference,

        @Nullable @Size(max = 2000, message = "at most 2000 characters")
        String complaint,

        @Nullable @Size(max = 100, message = "at most 100 characters")
        String customer) {

    Job.Labels labels() {
        return new Job.Labels(Words.optional(reference), Words.optional(complaint), Words.optional(customer));
    }
}
