package dev.stayfixed.jobs.entry;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.platform.Given;
import dev.stayfixed.verification.RepairedFault;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
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
@Schema(name = "JobRequest")
public record JobEntry(
        @NotNull(message = "the id of a vehicle") UUID vehicleId,

        @Nullable @Size(max = EntryLimits.NAME, message = "at most {max} characters")
        String reference,

        @Nullable @Size(max = EntryLimits.TEXT, message = "at most {max} characters")
        String complaint,

        @Nullable @Size(max = EntryLimits.NAME, message = "at most {max} characters")
        String customer,

        @Nullable Instant openedAt,

        @Nullable @Size(max = EntryLimits.SCAN, message = "at most {max} characters")
        String scan,

        @Nullable @Size(max = 50, message = "at most {max} faults")
        List<@Valid FaultEntry> faults) {

    /**
     * The opening itself.
     *
     * @param vehicle that is known, or was registered for it
     */
    public Job.Opening opening(Vehicle vehicle, Instant now) {
        return new Job.Opening(
                vehicle.id(),
                new Job.Labels(Given.optional(reference), Given.optional(complaint), Given.optional(customer)),
                Given.past("openedAt", openedAt, now),
                Optional.ofNullable(scan).filter(s -> !s.isBlank()),
                terms(vehicle.details().ignition()));
    }

    /** The faults; a row of a form in which nothing stands is none. */
    public List<RepairedFault> terms(Ignition ignition) {
        List<FaultEntry> given = faults == null ? List.of() : faults;
        return IntStream.range(0, given.size())
                .filter(i -> given.get(i) != null)
                .mapToObj(i -> given.get(i).terms("faults[" + i + "].", ignition))
                .toList();
    }
}
