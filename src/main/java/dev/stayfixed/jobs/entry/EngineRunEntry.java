package dev.stayfixed.jobs.entry;

import dev.stayfixed.jobs.EngineCheck;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.NotNull;
import java.util.UUID;

/**
 * A recorded drive that is taken for a run of a check.
 *
 * @param side of the latest repair of the fault
 * @param driveId a drive of the vehicle with a log
 */
@Schema(name = "EngineRunRequest")
public record EngineRunEntry(
        @NotNull(message = "before or after") EngineCheck.Side side,
        @NotNull(message = "a drive with a recorded log") UUID driveId) {}
