package dev.stayfixed.jobs.entry;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.platform.Given;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** What the shop calls a job; what is missing is removed. */
public record JobLabels(
        @Nullable @Size(max = EntryLimits.NAME, message = "at most {max} characters")
        String reference,

        @Nullable @Size(max = EntryLimits.TEXT, message = "at most {max} characters")
        String complaint,

        @Nullable @Size(max = EntryLimits.NAME, message = "at most {max} characters")
        String customer) {

    public Job.Labels labels() {
        return new Job.Labels(Given.optional(reference), Given.optional(complaint), Given.optional(customer));
    }
}
