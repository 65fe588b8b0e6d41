package dev.stayfixed.intake;

import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** The stored submissions of a vehicle, read again. */
@Component
class Originals {

    private final StoredSubmissions submissions;
    private final SubmissionReader reader;

    Originals(StoredSubmissions submissions, SubmissionReader reader) {
        this.submissions = submissions;
        this.reader = reader;
    }

    /** Every drive of the vehicle as its latest submission tells it, in no order. */
    List<ReadDrive> drivesOf(UUID vehicleId) {
        return submissions.latest(vehicleId).stream().map(this::read).toList();
    }

    /** One drive as its submission of this revision tells it. */
    ReadDrive drive(UUID driveId, int revision) {
        return read(submissions.findByDriveIdAndRevision(driveId, revision).orElseThrow());
    }

    ReadDrive read(StoredSubmission stored) {
        return SubmittedDrive.read(stored.driveId(), reader.read(stored.original()), stored.receivedAt());
    }
}
