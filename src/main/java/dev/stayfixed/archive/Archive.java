package dev.stayfixed.archive;

import dev.stayfixed.drive.condition.ConditionReport;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;

/**
 * The submissions as they came, and where each drive stands on file. Reads and writes need the running transaction; what is written of
 * a vehicle needs one that holds it.
 */
@Component
public class Archive {

    private static final Logger LOG = LoggerFactory.getLogger(Archive.class);

    private final StoredSubmissions submissions;
    private final StoredDrives drives;
    private final StoredLogs logs;
    private final StoredPictures pictures;
    private final StoredConditionReports reports;
    private final StoredLeftOuts leftOuts;
    private final Originals originals;

    Archive(
            StoredSubmissions submissions,
            StoredDrives drives,
            StoredLogs logs,
            StoredPictures pictures,
            StoredConditionReports reports,
            StoredLeftOuts leftOuts,
            Originals originals) {
        this.submissions = submissions;
        this.drives = drives;
        this.logs = logs;
        this.pictures = pictures;
        this.reports = reports;
        this.leftOuts = leftOuts;
        this.originals = originals;
    }

    /** A drive on file, and what its latest submission tells. */
    public record Archived(Filed filed, ReadDrive read) {}

    /** The drive whose submission had this very content. */
    public Optional<UUID> driveWith(UUID vehicleId, String digest) {
        return submissions.drivesWith(vehicleId, digest).stream().findFirst();
    }

    /**
     * Stores a submission and files its drive by it.
     *
     * @param read what it tells, with the drive and the revision that it is of
     */
    public Filed store(UUID vehicleId, Submitted submitted, ReadDrive read, Instant now) {
        UUID driveId = read.driveId();
        StoredSubmission stored = submissions.saveAndFlush(new StoredSubmission(
                vehicleId,
                driveId,
                read.revision(),
                now,
                submitted.original(),
                submitted.digest(),
                submitted.log().map(log -> new StoredSubmission.Log(log.mediaType(), log.mapping()))));
        StoredDrive row = read.revision() == 1
                ? drives.save(new StoredDrive(driveId, vehicleId, now, read))
                : drives.findById(driveId).orElseThrow();
        row.file(read, read.revision());
        drives.flush();
        submitted.log().ifPresent(log -> {
            logs.save(stored.id(), log.bytes(), log.mediaType());
            reports.save(driveId, read.revision(), log.judged().reports());
            pictures.save(driveId, read.revision(), log.judged().picture());
        });
        return row.filed();
    }

    /**
     * The vehicle of a drive.
     *
     * @throws Refused when there is no such drive
     */
    public UUID vehicleOf(UUID driveId) {
        return drives.vehicleOf(driveId).orElseThrow(() -> Refused.notFound("drive", driveId));
    }

    /**
     * Where a drive stands.
     *
     * @throws Refused when there is no such drive
     */
    public Filed filed(UUID driveId) {
        return row(driveId).filed();
    }

    private StoredDrive row(UUID driveId) {
        return drives.findById(driveId).orElseThrow(() -> Refused.notFound("drive", driveId));
    }

    /** What the submission tells by which a drive is judged. */
    public ReadDrive read(Filed filed) {
        return originals.drive(filed.id(), filed.revision());
    }

    /** Every drive of the vehicle that counts, as its latest submission tells it, in no order. */
    public List<ReadDrive> counting(UUID vehicleId) {
        return originals.drivesOf(vehicleId);
    }

    /** Drives of a vehicle, the latest start first. */
    public Page<Filed> page(UUID vehicleId, Page.Request page) {
        List<Filed> found =
                drives.page(vehicleId, page.after().at(), page.after().id(), Limit.of(page.limit() + 1)).stream()
                        .map(StoredDrive::filed)
                        .toList();
        return Page.of(found, page, filed -> new Page.Position(filed.start(), filed.id()));
    }

    /** Of these drives those that the vehicle has, in no order. */
    public List<Archived> some(UUID vehicleId, Set<UUID> driveIds) {
        Map<UUID, StoredDrive> rows = rows(vehicleId);
        return submissions.latest(vehicleId).stream()
                .filter(latest -> driveIds.contains(latest.driveId()))
                .map(latest -> new Archived(
                        Objects.requireNonNull(rows.get(latest.driveId())).filed(), originals.read(latest)))
                .toList();
    }

    private Map<UUID, StoredDrive> rows(UUID vehicleId) {
        return drives.findByVehicleId(vehicleId).stream()
                .collect(Collectors.toMap(StoredDrive::getId, Function.identity()));
    }

    /** Why a drive does not count; empty where it does. */
    public Optional<LeftOut> leftOut(UUID driveId) {
        return leftOuts.ofDrive(driveId).map(StoredLeftOut::facts);
    }

    /** Why drives of the vehicle do not count, by drive. */
    public Map<UUID, LeftOut> leftOuts(UUID vehicleId) {
        return leftOuts.ofVehicle(vehicleId).stream()
                .collect(Collectors.toMap(StoredLeftOut::driveId, StoredLeftOut::facts));
    }

    /** Takes a drive out of the count; a second reason replaces the first. */
    public void leaveOut(UUID vehicleId, UUID driveId, LeftOut leftOut) {
        takeIn(driveId, leftOut.at());
        leftOuts.saveAndFlush(new StoredLeftOut(vehicleId, driveId, leftOut));
    }

    /** Takes a drive into the count again. */
    public void takeIn(UUID driveId, Instant at) {
        leftOuts.ofDrive(driveId).ifPresent(leftOut -> leftOut.takenIn(at));
        leftOuts.flush();
    }

    /**
     * A submission as it came; of a log, what was said beside it.
     *
     * @param revision the latest where empty
     * @throws Refused when there is no such drive, or no such revision of it
     */
    public Original original(UUID driveId, OptionalInt revision) {
        return stored(row(driveId), revision).original();
    }

    /**
     * The log of a submission as it came.
     *
     * @param revision the latest where empty
     * @return empty where no log was sent
     * @throws Refused when there is no such drive, or no such revision of it
     */
    public Optional<SentLog> log(UUID driveId, OptionalInt revision) {
        StoredSubmission stored = stored(row(driveId), revision);
        return originals
                .log(stored)
                .map(opened -> new SentLog(opened.mediaType(), opened.bytes().bytes()));
    }

    private StoredSubmission stored(StoredDrive row, OptionalInt revision) {
        int wanted = revision.orElse(row.revision());
        return submissions
                .findByDriveIdAndRevision(row.getId(), wanted)
                .orElseThrow(() -> new Refused(
                        ProblemType.NOT_FOUND, "revision: found " + wanted + ", expected 1 to " + row.revision()));
    }

    /** The log of a drive and how to read it; empty where it has none. */
    Optional<OpenedLog> opened(UUID driveId, int revision) {
        return originals.log(driveId, revision);
    }

    /** What is drawn of the log of a drive; it is kept, and read from the log only where that has not happened yet. */
    Optional<LogPicture> picture(UUID driveId, int revision) {
        return pictures.find(driveId, revision).or(() -> originals.picture(driveId, revision));
    }

    /** What the log of a drive makes of conditions, by their keys: as it is kept, and the rest read from the log. */
    public Map<String, ConditionReport> reports(ReadDrive drive, Map<String, ConditionSet> sets) {
        Map<String, ConditionReport> all = new HashMap<>(reports.find(drive.driveId(), drive.revision(), sets));
        all.putAll(lacking(drive, sets, all.keySet()));
        return all;
    }

    /** The same; what had to be read is kept. */
    public Map<String, ConditionReport> keptReports(ReadDrive drive, Map<String, ConditionSet> sets) {
        Map<String, ConditionReport> all = new HashMap<>(reports.find(drive.driveId(), drive.revision(), sets));
        Map<String, ConditionReport> found = lacking(drive, sets, all.keySet());
        reports.save(drive.driveId(), drive.revision(), found);
        all.putAll(found);
        return all;
    }

    private Map<String, ConditionReport> lacking(ReadDrive drive, Map<String, ConditionSet> sets, Set<String> kept) {
        Map<String, ConditionSet> lacking = new HashMap<>(sets);
        lacking.keySet().removeAll(kept);
        return lacking.isEmpty() ? Map.of() : originals.reports(drive.driveId(), drive.revision(), lacking);
    }

    /** What is kept of this, by drive; only of the latest revision of each. */
    public Map<UUID, Map<String, ConditionReport>> keptReports(UUID vehicleId, Map<String, ConditionSet> sets) {
        return reports.ofVehicle(vehicleId, sets);
    }

    /** Vehicles with a submission whose drive is not on file, or not as its latest submission tells it. */
    public List<UUID> incomplete() {
        List<UUID> lacking = submissions.notOnFile();
        return lacking.isEmpty() ? List.of() : submissions.vehiclesOf(lacking);
    }

    /** Makes what is derived of a vehicle's submissions agree with them again, whatever a crash or a new version left behind. */
    public void restore(UUID vehicleId) {
        List<StoredSubmission> latest = submissions.latest(vehicleId);
        fileAgain(vehicleId, latest);
        if (latest.stream().anyMatch(submission -> submission.log().isPresent())) {
            drawAgain(vehicleId, latest);
        }
    }

    private void fileAgain(UUID vehicleId, List<StoredSubmission> all) {
        Map<UUID, StoredDrive> filed = rows(vehicleId);
        for (StoredSubmission latest : all) {
            ReadDrive read = originals.read(latest);
            StoredDrive row = filed.get(latest.driveId());
            if (row == null) {
                row = drives.save(new StoredDrive(latest.driveId(), vehicleId, firstReceipt(latest), read));
                LOG.warn("the drive {} was missing and is filed again from its submission", latest.driveId());
            }
            row.file(read, latest.revision());
        }
        drives.flush();
    }

    private void drawAgain(UUID vehicleId, List<StoredSubmission> all) {
        Set<UUID> kept = pictures.kept(vehicleId);
        for (StoredSubmission latest : all) {
            if (latest.log().isPresent() && !kept.contains(latest.driveId())) {
                originals
                        .picture(latest.driveId(), latest.revision())
                        .ifPresent(picture -> pictures.save(latest.driveId(), latest.revision(), picture));
            }
        }
    }

    private Instant firstReceipt(StoredSubmission latest) {
        return submissions
                .findByDriveIdAndRevision(latest.driveId(), 1)
                .orElse(latest)
                .receivedAt();
    }
}
