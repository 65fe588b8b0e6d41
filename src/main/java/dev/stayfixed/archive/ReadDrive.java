package dev.stayfixed.archive;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.reason.Reason;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * A submission, read.
 *
 * @param revision of the submission
 * @param until when the drive was over, as far as the submission tells: end, or start plus run time, or start
 * @param log what its log tells; empty where it had none
 * @param warnings what could not be used
 */
public record ReadDrive(
        DriveRecord record, int revision, Instant until, Optional<LogFacts> log, List<Reason> warnings) {

    /** Whether both cannot be true of one vehicle; a drive may begin in the moment in which another ends. */
    public boolean overlaps(Instant otherStart, Instant otherUntil) {
        return record.start().equals(otherStart) || (record.start().isBefore(otherUntil) && otherStart.isBefore(until));
    }

    public UUID driveId() {
        return UUID.fromString(record.id());
    }

    public boolean isScoredLog() {
        return log.filter(facts -> facts.report().isScorable()).isPresent();
    }

    public ReadDrive with(Map<String, Finding> conditions) {
        return new ReadDrive(record.with(conditions), revision, until, log, warnings);
    }
}
