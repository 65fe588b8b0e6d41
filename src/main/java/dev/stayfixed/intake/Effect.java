package dev.stayfixed.intake;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.Outcome;
import java.util.Optional;
import java.util.UUID;

/**
 * What a drive does to a fault.
 *
 * @param outcome what the drive says about the fault; empty where it is not judged for it, or was set aside
 * @param before where the fault stood before the submission, and
 * @param now where it stands with it
 */
public record Effect(
        UUID jobId,
        UUID faultId,
        TroubleCode code,
        Optional<Outcome> outcome,
        Reason reason,
        Standing before,
        Standing now) {}
