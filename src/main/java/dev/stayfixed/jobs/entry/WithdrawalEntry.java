package dev.stayfixed.jobs.entry;

import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** Why a check counts no more. */
@Schema(name = "WithdrawalRequest")
public record WithdrawalEntry(
        @NotBlank(message = "why it counts no more") @Size(max = 500, message = "at most {max} characters")
        String reason) {}
