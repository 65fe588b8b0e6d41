package dev.stayfixed.jobs;

import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import java.util.Optional;
import java.util.UUID;

/**
 * A fault and the conditions that were agreed for it.
 *
 * @param jobVersion grows with every change of the job
 * @param agreed empty where the shop has named none
 */
public record FaultConditions(
        UUID jobId,
        int jobVersion,
        UUID faultId,
        TroubleCode code,
        MonitorGroup group,
        Optional<AgreedConditions> agreed) {}
