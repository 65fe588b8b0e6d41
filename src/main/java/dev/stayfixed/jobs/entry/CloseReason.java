package dev.stayfixed.jobs.entry;

import dev.stayfixed.platform.Given;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.Size;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Why a job is closed; needed while a fault is not confirmed fixed. */
@Schema(name = "CloseRequest")
public record CloseReason(
        @Nullable @Size(max = EntryLimits.TEXT, message = "at most {max} characters")
        String reason) {

    public Optional<String> given() {
        return Given.optional(reason);
    }
}
