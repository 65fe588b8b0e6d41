package dev.stayfixed.jobs.entry;

import dev.stayfixed.jobs.Repair;
import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * The record of a repair, put right. What is missing stays as it was recorded; an empty text or list removes it.
 *
 * @param codesCleared service $04 or $14 was sent with the repair
 * @param scanBefore pasted answers, read before the repair and before any clear
 * @param scanAfter pasted answers, read after the repair and after the clear
 * @param measurements all of them
 * @param correctedBy who puts it right
 * @param reason why
 */
public record RepairCorrection(
        @Nullable Instant performedAt,

        @Nullable @Size(max = EntryLimits.TEXT, message = "at most {max} characters")
        String description,

        @Nullable @Size(max = EntryLimits.PARTS, message = "at most {max} parts")
        List<
                        @NotBlank(message = "the name or the number of a part")
                        @Size(max = EntryLimits.PART, message = "at most {max} characters") String>
                parts,

        @Nullable @Size(max = EntryLimits.NAME, message = "at most {max} characters")
        String technician,

        @Nullable Boolean codesCleared,

        @Nullable @Size(max = EntryLimits.SCAN, message = "at most {max} characters")
        String scanBefore,

        @Nullable @Size(max = EntryLimits.SCAN, message = "at most {max} characters")
        String scanAfter,

        @Nullable @Size(max = EntryLimits.MEASUREMENTS, message = "at most {max} measurements")
        List<RepairEntry.@Valid Measured> measurements,

        @Nullable @Size(max = EntryLimits.NAME, message = "at most {max} characters")
        String correctedBy,

        @Nullable @Size(max = 500, message = "at most {max} characters")
        String reason) {

    public Repair.Correction correction() {
        return new Repair.Correction(Given.optional(correctedBy), Given.optional(reason));
    }

    /** From the record as it stands to the record as it should be. */
    public UnaryOperator<Repair.Details> of(Instant now) {
        if (description != null && description.isBlank()) {
            throw Refused.content(new Mistake("description", description, "what was done"));
        }
        return was -> new Repair.Details(
                performedAt == null ? was.performedAt() : Given.past("performedAt", performedAt, now),
                description == null ? was.description() : description.strip(),
                parts == null ? was.parts() : parts,
                technician == null ? was.technician() : Given.optional(technician),
                codesCleared == null ? was.codesCleared() : codesCleared,
                scan(scanBefore, was.scanBefore()),
                scan(scanAfter, was.scanAfter()),
                measurements == null ? was.measurements() : RepairEntry.measured(measurements));
    }

    private static Optional<String> scan(@Nullable String said, Optional<String> was) {
        return said == null ? was : Optional.of(said).filter(text -> !text.isBlank());
    }
}
