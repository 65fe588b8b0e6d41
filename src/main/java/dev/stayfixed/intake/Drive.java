package dev.stayfixed.intake;

import dev.stayfixed.archive.LeftOut;
import dev.stayfixed.archive.LogFacts;
import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.judging.FaultReport;
import dev.stayfixed.reason.Reason;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * A drive of a vehicle as it is judged at present.
 *
 * @param revision 1 for the first submission, one more with each correction
 * @param receivedAt when the first submission came in
 * @param leftOut why it does not count; empty where it counts
 * @param log what its log tells; empty where it has none
 * @param conditions what its log made of the conditions of the vehicle's faults
 */
public record Drive(
        UUID id,
        int revision,
        UUID vehicleId,
        DriveRecord record,
        DriveFacts facts,
        Instant receivedAt,
        Optional<LeftOut> leftOut,
        List<Reason> warnings,
        Optional<LogFacts> log,
        List<FaultReport> conditions) {}
