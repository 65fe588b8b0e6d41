package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveRecord;
import java.time.Instant;
import java.util.List;

/**
 * A submission, read.
 *
 * @param until when the drive was over, as far as the submission tells: end, or start plus run time, or start
 * @param warnings what could not be used, each in a sentence
 */
record ReadDrive(DriveRecord record, Instant until, List<String> warnings) {

    /** Whether both cannot be true of one vehicle; a drive may begin in the moment in which another ends. */
    boolean overlaps(Instant otherStart, Instant otherUntil) {
        return record.start().equals(otherStart) || (record.start().isBefore(otherUntil) && otherStart.isBefore(until));
    }
}
