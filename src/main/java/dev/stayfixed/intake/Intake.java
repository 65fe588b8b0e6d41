package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.verification.RuleSet;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;

/** Takes drives in. A submission is stored before anything is made of it; the same drive again changes nothing. */
@Service
public class Intake {

    private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(5);

    private final StoredSubmissions submissions;
    private final StoredDrives drives;
    private final StoredLogs logs;
    private final StoredPictures pictures;
    private final StoredLeftOuts leftOuts;
    private final SubmissionReader reader;
    private final Originals originals;
    private final DriveConditions conditions;
    private final Folding folding;
    private final Judging judging;
    private final Vehicles vehicles;
    private final Durably durably;
    private final Clock clock;

    Intake(
            StoredSubmissions submissions,
            StoredDrives drives,
            StoredLogs logs,
            StoredPictures pictures,
            StoredLeftOuts leftOuts,
            SubmissionReader reader,
            Originals originals,
            DriveConditions conditions,
            Folding folding,
            Judging judging,
            Vehicles vehicles,
            Durably durably,
            Clock clock) {
        this.submissions = submissions;
        this.drives = drives;
        this.logs = logs;
        this.pictures = pictures;
        this.leftOuts = leftOuts;
        this.reader = reader;
        this.originals = originals;
        this.conditions = conditions;
        this.folding = folding;
        this.judging = judging;
        this.vehicles = vehicles;
        this.durably = durably;
        this.clock = clock;
    }

    /**
     * Takes a drive of a vehicle in.
     *
     * @throws Refused when it cannot be read, lies in the future, belongs to another vehicle or overlaps another drive; then nothing
     *     is stored
     */
    public Received receive(UUID vehicleId, Original original) {
        DriveSubmission submission = reader.read(original);
        return receive(vehicleId, new Submitted(original, submission, reader.digest(submission), Optional.empty()));
    }

    Received receive(UUID vehicleId, Submitted submitted) {
        return durably.write(() -> {
            Vehicle vehicle = vehicles.hold(vehicleId);
            Optional<UUID> same = submissions.drivesWith(vehicleId, submitted.digest()).stream()
                    .findFirst();
            return same.isPresent() ? again(same.get(), vehicle) : taken(vehicle, UUID.randomUUID(), 1, submitted);
        });
    }

    private Received taken(Vehicle vehicle, UUID driveId, int revision, Submitted submitted) {
        Instant now = clock.instant();
        ReadDrive read = SubmittedDrive.read(
                driveId,
                revision,
                submitted.said(),
                submitted.log().map(log -> log.judged().facts()),
                now);
        FoldedVehicle before = folding.of(vehicle.id());
        check(vehicle, driveId, submitted, read, before, now);
        StoredSubmission stored = submissions.saveAndFlush(new StoredSubmission(
                vehicle.id(), driveId, revision, now, submitted.original(), submitted.digest(), submitted.storedLog()));
        submitted.log().ifPresent(log -> {
            logs.save(stored.id(), log.bytes(), log.mediaType());
            conditions.keep(driveId, revision, log.judged().reports());
            pictures.save(driveId, revision, log.judged().picture());
        });
        StoredDrive row = revision == 1
                ? drives.save(new StoredDrive(driveId, vehicle.id(), now, read))
                : drives.findById(driveId).orElseThrow();
        row.file(read, revision);
        drives.flush();
        if (revision == 1) {
            folding.added(vehicle.id(), before, read);
        } else {
            folding.changed(vehicle.id());
        }
        Judging.Judged judged = judging.replay(vehicle.id(), cause(driveId, revision));
        Optional<LeftOut> leftOut = revision == 1 ? Optional.empty() : whyLeftOut(driveId);
        return received(row, read, vehicle, true, leftOut, judged);
    }

    private static VehicleJudged.Cause cause(UUID driveId, int revision) {
        return revision == 1
                ? new VehicleJudged.Cause.NewDrive(driveId)
                : new VehicleJudged.Cause.CorrectedDrive(driveId);
    }

    private Received again(UUID driveId, Vehicle vehicle) {
        StoredDrive row = drives.findById(driveId).orElseThrow();
        ReadDrive read = originals.drive(driveId, row.revision());
        return received(row, read, vehicle, false, whyLeftOut(driveId), judging.judged(vehicle.id()));
    }

    private Optional<LeftOut> whyLeftOut(UUID driveId) {
        return leftOuts.ofDrive(driveId).map(StoredLeftOut::facts);
    }

    private Received received(
            StoredDrive row,
            ReadDrive read,
            Vehicle vehicle,
            boolean isNew,
            Optional<LeftOut> leftOut,
            Judging.Judged judged) {
        return new Received(
                drive(row, read, vehicle, leftOut, judged.alerts()), isNew, Effects.of(row.getId(), judged.verdicts()));
    }

    /**
     * Replaces what is judged of a drive; the earlier submissions stay stored.
     *
     * @throws Refused as {@link #receive}, and when the drive was changed meanwhile
     */
    public Received correct(UUID driveId, IfMatch ifMatch, Original original) {
        DriveSubmission submission = reader.read(original);
        return correct(
                driveId, ifMatch, new Submitted(original, submission, reader.digest(submission), Optional.empty()));
    }

    Received correct(UUID driveId, IfMatch ifMatch, Submitted submitted) {
        return durably.write(() -> {
            Vehicle vehicle = vehicles.hold(vehicleOf(driveId));
            StoredDrive row = drives.findById(driveId).orElseThrow();
            ifMatch.check(row.revision());
            return taken(vehicle, driveId, row.revision() + 1, submitted);
        });
    }

    /**
     * Leaves a drive out of the count: it stays stored, and everything is judged as if it had not come in. A second reason replaces
     * the first.
     *
     * @throws Refused when there is no such drive, or the reason is empty or longer than 500 characters
     */
    public Drive leaveOut(UUID driveId, String reason) {
        LeftOut leftOut = Refused.unless("#/reason", () -> new LeftOut(reason, clock.instant()));
        return durably.write(() -> {
            Vehicle vehicle = vehicles.hold(vehicleOf(driveId));
            leftOuts.ofDrive(driveId).ifPresent(earlier -> earlier.takenIn(leftOut.at()));
            leftOuts.saveAndFlush(new StoredLeftOut(vehicle.id(), driveId, leftOut));
            folding.changed(vehicle.id());
            DriveRecord record = originals
                    .drive(driveId, drives.findById(driveId).orElseThrow().revision())
                    .record();
            judging.replay(vehicle.id(), new VehicleJudged.Cause.DriveLeftOut(record, reason));
            return get(driveId);
        });
    }

    /**
     * Takes a drive in again that was left out; nothing changes for one that was not.
     *
     * @throws Refused when there is no such drive, or another one has taken its time
     */
    public Drive takeIn(UUID driveId) {
        return durably.write(() -> {
            Vehicle vehicle = vehicles.hold(vehicleOf(driveId));
            Optional<StoredLeftOut> leftOut = leftOuts.ofDrive(driveId);
            if (leftOut.isPresent()) {
                StoredDrive row = drives.findById(driveId).orElseThrow();
                refuseOverlap(folding.of(vehicle.id()), driveId, originals.drive(driveId, row.revision()));
                leftOut.get().takenIn(clock.instant());
                leftOuts.flush();
                folding.changed(vehicle.id());
                judging.replay(vehicle.id(), new VehicleJudged.Cause.CorrectedDrive(driveId));
            }
            return get(driveId);
        });
    }

    /** The drives of a vehicle that are left out, the earliest start first. */
    public List<Drive> leftOut(UUID vehicleId) {
        return durably.read(() -> {
            Set<UUID> left = leftOuts.ofVehicle(vehicleId).stream()
                    .map(StoredLeftOut::driveId)
                    .collect(Collectors.toSet());
            return get(vehicleId, left);
        });
    }

    /** Several drives of one vehicle, the earliest start first; those that it has not are left out. */
    public List<Drive> get(UUID vehicleId, Set<UUID> driveIds) {
        if (driveIds.isEmpty()) {
            return List.of();
        }
        return durably.read(() -> {
            Vehicle vehicle = vehicles.get(vehicleId);
            Map<UUID, StoredDrive> rows = drives.findByVehicleId(vehicleId).stream()
                    .collect(Collectors.toMap(StoredDrive::getId, row -> row));
            Map<UUID, LeftOut> left = leftOutsOf(vehicleId);
            List<Alert> alerts = judging.alerts(vehicleId);
            return submissions.latest(vehicleId).stream()
                    .filter(latest -> driveIds.contains(latest.driveId()))
                    .map(latest -> drive(
                            Objects.requireNonNull(rows.get(latest.driveId())),
                            originals.read(latest),
                            vehicle,
                            Optional.ofNullable(left.get(latest.driveId())),
                            alerts))
                    .sorted(Comparator.comparing(drive -> drive.record().start()))
                    .toList();
        });
    }

    private Map<UUID, LeftOut> leftOutsOf(UUID vehicleId) {
        return leftOuts.ofVehicle(vehicleId).stream()
                .collect(Collectors.toMap(StoredLeftOut::driveId, StoredLeftOut::facts));
    }

    private void check(
            Vehicle vehicle, UUID driveId, Submitted submitted, ReadDrive read, FoldedVehicle before, Instant now) {
        refuseFuture("start", read.record().start(), now);
        read.record().end().ifPresent(end -> refuseFuture("end", end, now));
        if (submitted.said().takenAt() != null) {
            refuseFuture("takenAt", submitted.said().takenAt(), now);
        }
        SameVehicle.checkNumber(
                vehicle,
                Stream.concat(
                        read.record().scans().stream().flatMap(timed -> timed.scan().vin().stream()),
                        submitted.log().flatMap(LogSubmission::vin).stream()));
        refuseOverlap(before, driveId, read);
        if (!submitted.said().isSameVehicleConfirmed()) {
            SameVehicle.checkHistory(
                    read,
                    before.drives().known().stream()
                            .filter(other -> !other.read().record().id().equals(driveId.toString()))
                            .toList());
        }
    }

    private static void refuseFuture(String field, Instant time, Instant now) {
        if (time.isAfter(now.plus(CLOCKS_DIFFER))) {
            throw new Refused(
                    ProblemType.TIME_IN_FUTURE,
                    field + ": found " + time + ", expected a time up to now, " + now + "; check the offset from UTC");
        }
    }

    private static void refuseOverlap(FoldedVehicle before, UUID driveId, ReadDrive read) {
        before.drives().known().stream()
                .map(KnownDrive::read)
                .filter(other -> !other.record().id().equals(driveId.toString()))
                .filter(other -> read.overlaps(other.record().start(), other.until()))
                .findFirst()
                .ifPresent(other -> {
                    String id = other.record().id();
                    throw new Refused(
                            ProblemType.DRIVE_OVERLAPS,
                            ("from %s to %s this vehicle is already on the drive %s; if this is a better record of that drive,"
                                            + " correct it with PUT /api/v1/drives/%s and its ETag as If-Match; if it is another"
                                            + " drive, send its start")
                                    .formatted(other.record().start(), other.until(), id, id),
                            Map.of("existingId", id));
                });
    }

    public Drive get(UUID driveId) {
        return durably.read(() -> {
            Vehicle vehicle = vehicles.get(vehicleOf(driveId));
            StoredDrive row = drives.findById(driveId).orElseThrow();
            return drive(row, originals.drive(driveId, row.revision()), vehicle);
        });
    }

    /** Drives of a vehicle, the latest start first. */
    public Page<Drive> ofVehicle(UUID vehicleId, Page.Request page) {
        return durably.read(() -> {
            Vehicle vehicle = vehicles.get(vehicleId);
            List<StoredDrive> found = new ArrayList<>(
                    drives.page(vehicleId, page.after().at(), page.after().id(), Limit.of(page.limit() + 1)));
            Map<UUID, LeftOut> left = leftOutsOf(vehicleId);
            List<Alert> alerts = judging.alerts(vehicleId);
            return Page.of(found, page, d -> new Page.Position(d.startAt(), d.getId()))
                    .map(row -> drive(
                            row,
                            originals.drive(row.getId(), row.revision()),
                            vehicle,
                            Optional.ofNullable(left.get(row.getId())),
                            alerts));
        });
    }

    /** What the log of a drive made of the conditions of each fault of its vehicle. */
    public List<FaultReport> conditions(UUID driveId) {
        return get(driveId).conditions();
    }

    /**
     * The log of a submission as it came.
     *
     * @param revision the latest where empty
     * @return empty where no log was sent
     */
    public Optional<SentLog> log(UUID driveId, OptionalInt revision) {
        return durably.read(() -> {
            StoredDrive row = drives.findById(driveId).orElseThrow(() -> Refused.notFound("drive", driveId));
            return stored(row, revision)
                    .log()
                    .flatMap(kind -> originals.log(driveId, revision.orElse(row.revision())))
                    .map(opened ->
                            new SentLog(opened.mediaType(), opened.bytes().bytes()));
        });
    }

    private StoredSubmission stored(StoredDrive row, OptionalInt revision) {
        int wanted = revision.orElse(row.revision());
        return submissions
                .findByDriveIdAndRevision(row.getId(), wanted)
                .orElseThrow(() -> new Refused(
                        ProblemType.NOT_FOUND, "revision: found " + wanted + ", expected 1 to " + row.revision()));
    }

    /**
     * A submission as it came; of a log, what was said beside it.
     *
     * @param revision the latest where empty
     */
    public Original original(UUID driveId, OptionalInt revision) {
        return durably.read(() -> {
            StoredDrive row = drives.findById(driveId).orElseThrow(() -> Refused.notFound("drive", driveId));
            return stored(row, revision).original();
        });
    }

    private UUID vehicleOf(UUID driveId) {
        return drives.vehicleOf(driveId).orElseThrow(() -> Refused.notFound("drive", driveId));
    }

    private Drive drive(StoredDrive row, ReadDrive read, Vehicle vehicle) {
        return drive(row, read, vehicle, whyLeftOut(row.getId()), judging.alerts(vehicle.id()));
    }

    private Drive drive(
            StoredDrive row, ReadDrive read, Vehicle vehicle, Optional<LeftOut> leftOut, List<Alert> alerts) {
        return new Drive(
                row.getId(),
                row.revision(),
                row.vehicleId(),
                read.record(),
                DriveFacts.of(read.record().summary(), vehicle.details().ignition(), RuleSet.STANDARD.drive()),
                row.receivedAt(),
                leftOut,
                warnings(read, alerts),
                read.log(),
                conditions.of(vehicle.id(), read));
    }

    /** What could not be used of a drive, where its scans disagree with themselves, and what it shows that is new. */
    private static List<String> warnings(ReadDrive read, List<Alert> alerts) {
        List<String> warnings = new ArrayList<>(read.warnings());
        warnings.addAll(ScanDoubts.of(
                read.record().scans().stream().map(DriveRecord.TimedScan::scan).toList()));
        alerts.stream()
                .filter(alert -> alert.driveId().equals(read.record().id()))
                .forEach(alert -> warnings.add(alert.words()));
        return warnings;
    }
}
