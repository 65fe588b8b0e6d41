package dev.stayfixed.archive;

import dev.stayfixed.drive.condition.ConditionReport;
import dev.stayfixed.drive.condition.ConditionSet;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** The stored submissions of a vehicle, read again. What was read from a log once is not read again. */
@Component
class Originals {

    private final StoredSubmissions submissions;
    private final StoredDrives drives;
    private final StoredLogs logs;
    private final SubmissionReader reader;
    private final LogJudge judge;
    private final Map<UUID, ReadDrive> recent = Collections.synchronizedMap(new Recent());

    Originals(
            StoredSubmissions submissions,
            StoredDrives drives,
            StoredLogs logs,
            SubmissionReader reader,
            LogJudge judge) {
        this.submissions = submissions;
        this.drives = drives;
        this.logs = logs;
        this.reader = reader;
        this.judge = judge;
    }

    /** Every drive of the vehicle that counts, as its latest submission tells it, in no order. */
    List<ReadDrive> drivesOf(UUID vehicleId) {
        List<StoredSubmission> latest = submissions.judged(vehicleId);
        if (latest.stream().anyMatch(s -> s.log().isPresent())) {
            // one query for all the rows that are then asked for one by one
            drives.findByVehicleId(vehicleId).forEach(StoredDrive::revision);
        }
        return latest.stream().map(this::read).toList();
    }

    /** One drive as its submission of this revision tells it. */
    ReadDrive drive(UUID driveId, int revision) {
        return read(stored(driveId, revision));
    }

    /** A submission never changes, so what was read from one without a log is kept for a while. */
    ReadDrive read(StoredSubmission stored) {
        if (stored.log().isPresent()) {
            return readAgain(stored);
        }
        ReadDrive kept = recent.get(stored.id());
        if (kept != null) {
            return kept;
        }
        ReadDrive read = readAgain(stored);
        recent.put(stored.id(), read);
        return read;
    }

    private ReadDrive readAgain(StoredSubmission stored) {
        Optional<LogFacts> log = stored.log()
                .map(kind -> drives.findById(stored.driveId())
                        .flatMap(row -> row.logFacts(stored.revision()))
                        .orElseGet(() -> judged(stored, kind, Map.of()).facts()));
        return SubmittedDrive.read(stored.driveId(), stored.revision(), said(stored), log, stored.receivedAt());
    }

    /** What the log of a drive makes of conditions; reads the log. */
    Map<String, ConditionReport> reports(UUID driveId, int revision, Map<String, ConditionSet> sets) {
        StoredSubmission stored = stored(driveId, revision);
        return stored.log().map(kind -> judged(stored, kind, sets).reports()).orElse(Map.of());
    }

    /** What is drawn of the log of a drive; reads the log. Empty where it has none. */
    Optional<LogPicture> picture(UUID driveId, int revision) {
        StoredSubmission stored = stored(driveId, revision);
        return stored.log().map(kind -> judged(stored, kind, Map.of()).picture());
    }

    private JudgedLog judged(StoredSubmission stored, StoredSubmission.Log kind, Map<String, ConditionSet> sets) {
        return judge.judge(log(stored, kind), kind.mapping(), said(stored), sets);
    }

    private UploadedLog log(StoredSubmission stored, StoredSubmission.Log kind) {
        return logs.open(stored.id(), kind.mediaType());
    }

    /** The log of a drive and how to read it; empty where it has none. */
    Optional<OpenedLog> log(UUID driveId, int revision) {
        return log(stored(driveId, revision));
    }

    Optional<OpenedLog> log(StoredSubmission stored) {
        return stored.log().map(kind -> new OpenedLog(log(stored, kind), kind.mediaType(), kind.mapping()));
    }

    private DriveSubmission said(StoredSubmission stored) {
        return stored.log().isPresent() ? reader.readBesideLog(stored.original()) : reader.read(stored.original());
    }

    private StoredSubmission stored(UUID driveId, int revision) {
        return submissions.findByDriveIdAndRevision(driveId, revision).orElseThrow();
    }

    /** The drives that were read last. */
    private static final class Recent extends LinkedHashMap<UUID, ReadDrive> {

        private static final int MOST = 256;

        Recent() {
            super(MOST * 2, 0.75f, true);
        }

        @Override
        protected boolean removeEldestEntry(Map.Entry<UUID, ReadDrive> eldest) {
            return size() > MOST;
        }
    }
}
