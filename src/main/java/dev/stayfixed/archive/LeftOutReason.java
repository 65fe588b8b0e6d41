package dev.stayfixed.archive;

import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** Why a drive does not count. */
@Schema(name = "LeaveOutRequest")
public record LeftOutReason(
        @NotBlank(message = "why the drive does not count")
        @Size(max = LeftOut.LONGEST, message = "at most {max} characters")
        String reason) {}
