package dev.stayfixed.jobs.api;

import dev.stayfixed.jobs.Repair;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.api.Words;
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
record RepairCorrection(
        @Nullable Instant performedAt,

        @Nullable @Size(max = 2000, message = "at most 2000 characters")
        String description,

        @Nullable @Size(max = 100, message = "at most 100 parts")
        List<
                        @NotBlank(message = "the name or the number of a part")
                        @Size(max = 200, message = "at most 200 characters") String>
                parts,

        @Nullable @Size(max = 100, message = "at most 100 characters")
        String technician,

        @Nullable Boolean codesCleared,

        @Nullable @Size(max = 1_000_000, message = "at most 1000000 characters")
        String scanBefore,

        @Nullable @Size(max = 1_000_000, message = "at most 1000000 characters")
        String scanAfter,

        @Nullable @Size(max = 100, message = "at most 100 measurements")
        List<RepairRequest.@Valid Measured> measurements,

        @Nullable @Size(max = 100, message = "at most 100 characters")
        String correctedBy,

        @Nullable @Size(max = 500, message = "at most 500 characters")
        String reason) {

    Repair.Correction correction() {
        return new Repair.Correction(Words.optional(correctedBy), Words.optional(reason));
    }

    /** From the record as it stands to the record as it should be. */
    UnaryOperator<Repair.Details> of(Instant now) {
        if (description != null && description.isBlank()) {
            throw Refused.content(new Mistake("description", description, "what was done"));
        }
        return was -> new Repair.Details(
                performedAt == null ? was.performedAt() : Words.past("performedAt", performedAt, now),
                description == null ? was.description() : description.strip(),
                parts == null ? was.parts() : parts,
                technician == null ? was.technician() : Words.optional(technician),
                codesCleared == null ? was.codesCleared() : codesCleared,
                scan(scanBefore, was.scanBefore()),
                scan(scanAfter, was.scanAfter()),
                measurements == null ? was.measurements() : RepairRequest.measured(measurements));
    }

    private static Optional<String> scan(@Nullable String said, Optional<String> was) {
        return said == null ? was : Optional.of(said).filter(text -> !text.isBlank());
    }
}
