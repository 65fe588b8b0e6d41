package dev.stayfixed.judging.entry;

import dev.stayfixed.jobs.FaultHistory;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.verification.confidence.Intermittence;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import org.jspecify.annotations.Nullable;

/**
 * How often it failed before the repair.
 *
 * @param wantedConfidence 0.95 where nothing is said
 */
@Schema(name = "ConfidenceRequest")
public record ConfidenceEntry(
        @NotNull @Min(0) @Max(10_000) Integer failed,
        @NotNull @Min(0) @Max(10_000) Integer monitored,

        @DecimalMin("0.5") @DecimalMax("0.999") @Nullable Double wantedConfidence) {

    public FaultHistory history() {
        if (failed > monitored) {
            throw Refused.content(new Mistake("failed", failed, "at most the monitored trips, " + monitored));
        }
        return new FaultHistory(
                new Intermittence(failed, monitored), wantedConfidence == null ? 0.95 : wantedConfidence);
    }
}
