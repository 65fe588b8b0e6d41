package dev.stayfixed.worklist;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.verification.Trips;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** An open job as it stands in the list: enough to see whose turn it is. */
public record OpenJob(
        UUID id,
        Attention attention,
        String vehicle,
        Optional<String> plate,
        Optional<String> vin,
        Optional<String> customer,
        Optional<String> reference,
        Instant openedAt,
        Optional<Instant> lastDrive,
        List<Line> faults) {

    /** A fault of the job, and where it stands. */
    public record Line(String code, MonitorGroup group, Trips trips, Standing standing) {}
}
