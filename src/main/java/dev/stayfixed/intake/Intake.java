package dev.stayfixed.intake;

import dev.stayfixed.archive.Archive;
import dev.stayfixed.archive.DriveSubmission;
import dev.stayfixed.archive.Filed;
import dev.stayfixed.archive.LeftOut;
import dev.stayfixed.archive.LogSubmission;
import dev.stayfixed.archive.Original;
import dev.stayfixed.archive.ReadDrive;
import dev.stayfixed.archive.SentLog;
import dev.stayfixed.archive.SubmissionReader;
import dev.stayfixed.archive.Submitted;
import dev.stayfixed.archive.SubmittedDrive;
import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.judging.Alert;
import dev.stayfixed.judging.DriveConditions;
import dev.stayfixed.judging.FaultReport;
import dev.stayfixed.judging.FoldedVehicle;
import dev.stayfixed.judging.Folding;
import dev.stayfixed.judging.Judging;
import dev.stayfixed.judging.KnownDrive;
import dev.stayfixed.judging.VehicleJudged;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.WhoAsks;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.RuleSet;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Service;

/** Takes drives in. A submission is stored before anything is made of it; the same drive again changes nothing. */
@Service
public class Intake {

    private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(5);

    private final Archive archive;
    private final SubmissionReader reader;
    private final DriveConditions conditions;
    private final Folding folding;
    private final Judging judging;
    private final Vehicles vehicles;
    private final Durably durably;
    private final WhoAsks who;
    private final Clock clock;

    Intake(
            Archive archive,
            SubmissionReader reader,
            DriveConditions conditions,
            Folding folding,
            Judging judging,
            Vehicles vehicles,
            Durably durably,
            WhoAsks who,
            Clock clock) {
        this.archive = archive;
        this.reader = reader;
        this.conditions = conditions;
        this.folding = folding;
        this.judging = judging;
        this.vehicles = vehicles;
        this.durably = durably;
        this.who = who;
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
            Optional<UUID> same = archive.driveWith(vehicleId, submitted.digest());
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
        Filed filed = archive.store(vehicle.id(), submitted, read, now);
        if (revision == 1) {
            return received(filed, read, vehicle, true, Optional.empty(), judging.replay(vehicle.id(), before, read));
        }
        folding.changed(vehicle.id());
        Judging.Judged judged = judging.replay(vehicle.id(), new VehicleJudged.Cause.CorrectedDrive(driveId));
        return received(filed, read, vehicle, true, archive.leftOut(driveId), judged);
    }

    private Received again(UUID driveId, Vehicle vehicle) {
        Filed filed = archive.filed(driveId);
        return received(
                filed, archive.read(filed), vehicle, false, archive.leftOut(driveId), judging.judged(vehicle.id()));
    }

    private Received received(
            Filed filed,
            ReadDrive read,
            Vehicle vehicle,
            boolean isNew,
            Optional<LeftOut> leftOut,
            Judging.Judged judged) {
        return new Received(
                drive(filed, read, vehicle, leftOut, judged.alerts()),
                isNew,
                Effects.of(filed.id(), judged.verdicts()));
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
            Vehicle vehicle = vehicles.hold(archive.vehicleOf(driveId));
            int revision = archive.filed(driveId).revision();
            ifMatch.check(revision);
            return taken(vehicle, driveId, revision + 1, submitted);
        });
    }

    /**
     * Leaves a drive out of the count: it stays stored, and everything is judged as if it had not come in. A second reason replaces
     * the first.
     *
     * @throws Refused when there is no such drive, or the reason is empty or longer than 500 characters
     */
    public Drive leaveOut(UUID driveId, String reason) {
        LeftOut leftOut = Refused.unless("reason", () -> new LeftOut(reason, clock.instant()));
        return durably.write(() -> {
            Vehicle vehicle = vehicles.hold(archive.vehicleOf(driveId));
            archive.leaveOut(vehicle.id(), driveId, leftOut);
            folding.changed(vehicle.id());
            DriveRecord record = archive.read(archive.filed(driveId)).record();
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
            Vehicle vehicle = vehicles.hold(archive.vehicleOf(driveId));
            if (archive.leftOut(driveId).isPresent()) {
                refuseOverlap(folding.of(vehicle.id()), driveId, archive.read(archive.filed(driveId)));
                archive.takeIn(driveId, clock.instant());
                folding.changed(vehicle.id());
                judging.replay(vehicle.id(), new VehicleJudged.Cause.CorrectedDrive(driveId));
            }
            return get(driveId);
        });
    }

    /** The drives of a vehicle that are left out, the earliest start first. */
    public List<Drive> leftOut(UUID vehicleId) {
        return durably.read(() -> {
            return get(vehicleId, archive.leftOuts(vehicleId).keySet());
        });
    }

    /** Several drives of one vehicle, the earliest start first; those that it has not are left out. */
    public List<Drive> get(UUID vehicleId, Set<UUID> driveIds) {
        if (driveIds.isEmpty()) {
            return List.of();
        }
        return durably.read(() -> {
            Vehicle vehicle = vehicles.get(vehicleId);
            Map<UUID, LeftOut> left = archive.leftOuts(vehicleId);
            List<Alert> alerts = judging.alerts(vehicleId);
            return archive.some(vehicleId, driveIds).stream()
                    .map(one -> drive(
                            one.filed(),
                            one.read(),
                            vehicle,
                            Optional.ofNullable(left.get(one.filed().id())),
                            alerts))
                    .sorted(Comparator.comparing(drive -> drive.record().start()))
                    .toList();
        });
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
        if (!(submitted.said().isSameVehicleConfirmed() && who.vouches())) {
            SameVehicle.checkHistory(
                    read,
                    before.drives().known().stream()
                            .filter(other -> !other.read().record().id().equals(driveId.toString()))
                            .toList());
        }
    }

    private static void refuseFuture(String field, Instant time, Instant now) {
        if (time.isAfter(now.plus(CLOCKS_DIFFER))) {
            throw Refused.at(
                    ProblemType.TIME_IN_FUTURE,
                    Mistake.said(
                            field,
                            field + ": found " + time + ", expected a time up to now, " + now
                                    + "; check the offset from UTC"));
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
            Vehicle vehicle = vehicles.get(archive.vehicleOf(driveId));
            Filed filed = archive.filed(driveId);
            return drive(filed, archive.read(filed), vehicle, archive.leftOut(driveId), judging.alerts(vehicle.id()));
        });
    }

    /** Drives of a vehicle, the latest start first. */
    public Page<Drive> ofVehicle(UUID vehicleId, Page.Request page) {
        return durably.read(() -> {
            Vehicle vehicle = vehicles.get(vehicleId);
            Map<UUID, LeftOut> left = archive.leftOuts(vehicleId);
            List<Alert> alerts = judging.alerts(vehicleId);
            return archive.page(vehicleId, page)
                    .map(filed -> drive(
                            filed, archive.read(filed), vehicle, Optional.ofNullable(left.get(filed.id())), alerts));
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
        return durably.read(() -> archive.log(driveId, revision));
    }

    /**
     * A submission as it came; of a log, what was said beside it.
     *
     * @param revision the latest where empty
     */
    public Original original(UUID driveId, OptionalInt revision) {
        return durably.read(() -> archive.original(driveId, revision));
    }

    private Drive drive(Filed filed, ReadDrive read, Vehicle vehicle, Optional<LeftOut> leftOut, List<Alert> alerts) {
        return new Drive(
                filed.id(),
                filed.revision(),
                filed.vehicleId(),
                read.record(),
                DriveFacts.of(read.record().summary(), vehicle.details().ignition(), RuleSet.STANDARD.drive()),
                filed.receivedAt(),
                leftOut,
                warnings(read, alerts),
                read.log(),
                conditions.of(vehicle.id(), read));
    }

    /** What could not be used of a drive, where its scans disagree with themselves, and what it shows that is new. */
    private static List<Reason> warnings(ReadDrive read, List<Alert> alerts) {
        List<Reason> warnings = new ArrayList<>(read.warnings());
        warnings.addAll(ScanDoubts.of(
                read.record().scans().stream().map(DriveRecord.TimedScan::scan).toList()));
        alerts.stream()
                .filter(alert -> alert.driveId().equals(read.record().id()))
                .forEach(alert -> warnings.add(alert.said()));
        return warnings;
    }
}
