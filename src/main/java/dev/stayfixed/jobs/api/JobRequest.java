package dev.stayfixed.jobs.api;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.web.api.Words;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What opens a job.
 *
 * @param reference the shop's own number
 * @param complaint in the customer's words
 * @param customer whose vehicle it is
 * @param openedAt now, if missing
 * @param scan pasted answers of the control units
 * @param faults taken from the confirmed codes of the scan, else its pending ones, if missing
 */
record JobRequest(
        @NotNull(message = "the id of a vehicle") UUID vehicleId,

        @Nullable @Size(max = 100, message = "at most 100 characters")
        String reference,

        @Nullable @Size(max = 2000, message = "at most 2000 characters")
        String complaint,

        @Nullable @Size(max = 100, message = "at most 100 characters")
        String customer,

        @Nullable Instant openedAt,

        @Nullable @Size(max = 1_000_000, message = "at most 1000000 characters")
        String scan,

        @Nullable @Size(max = 50, message = "at most 50 faults")
        List<@Valid FaultRequest> faults) {

    Job.Opening opening(Ignition ignition, Instant now) {
        return new Job.Opening(
                vehicleId,
                new Job.Labels(Words.optional(reference), Words.optional(complaint), Words.optional(customer)),
                Words.past("openedAt", openedAt, now),
                scan == null || scan.isBlank() ? java.util.Optional.empty() : java.util.Optional.of(scan),
                terms(ignition));
    }

    private List<RepairedFault> terms(Ignition ignition) {
        List<FaultRequest> given = faults == null ? List.of() : faults;
        return IntStream.range(0, given.size())
                .mapToObj(i -> given.get(i).terms("faults[" + i + "].", ignition))
                .toList();
    }
}
