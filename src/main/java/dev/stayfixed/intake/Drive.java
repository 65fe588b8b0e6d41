package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.drive.DriveRecord;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * A drive of a vehicle as it is judged at present.
 *
 * @param revision 1 for the first submission, one more with each correction
 * @param receivedAt when the first submission came in
 */
public record Drive(
        UUID id,
        int revision,
        UUID vehicleId,
        DriveRecord record,
        DriveFacts facts,
        Instant receivedAt,
        List<String> warnings) {}
