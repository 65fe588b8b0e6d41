package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.obd.Vin;
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
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;

/** Takes drives in. A submission is stored before anything is made of it; the same drive again changes nothing. */
@Service
public class Intake {

    private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(5);

    private final StoredSubmissions submissions;
    private final StoredDrives drives;
    private final SubmissionReader reader;
    private final Originals originals;
    private final Judging judging;
    private final Vehicles vehicles;
    private final Durably durably;
    private final Clock clock;

    Intake(
            StoredSubmissions submissions,
            StoredDrives drives,
            SubmissionReader reader,
            Originals originals,
            Judging judging,
            Vehicles vehicles,
            Durably durably,
            Clock clock) {
        this.submissions = submissions;
        this.drives = drives;
        this.reader = reader;
        this.originals = originals;
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
        String digest = reader.digest(submission);
        return durably.write(() -> {
            Vehicle vehicle = vehicles.hold(vehicleId);
            Optional<UUID> same =
                    submissions.drivesWith(vehicleId, digest).stream().findFirst();
            return same.isPresent()
                    ? again(same.get(), vehicle)
                    : first(vehicle, UUID.randomUUID(), original, submission, digest);
        });
    }

    private Received first(
            Vehicle vehicle, UUID driveId, Original original, DriveSubmission submission, String digest) {
        Instant now = clock.instant();
        ReadDrive read = SubmittedDrive.read(driveId, submission, now);
        check(vehicle, driveId, submission, read, now);
        submissions.save(new StoredSubmission(vehicle.id(), driveId, 1, now, original, digest));
        StoredDrive row = drives.save(new StoredDrive(driveId, vehicle.id(), now, read));
        drives.flush();
        return new Received(drive(row, read, vehicle), true, Effects.of(driveId, judging.replay(vehicle.id())));
    }

    private Received again(UUID driveId, Vehicle vehicle) {
        StoredDrive row = drives.findById(driveId).orElseThrow();
        ReadDrive read = originals.drive(driveId, row.revision());
        return new Received(drive(row, read, vehicle), false, Effects.of(driveId, judging.replay(vehicle.id())));
    }

    /**
     * Replaces what is judged of a drive; the earlier submissions stay stored.
     *
     * @throws Refused as {@link #receive}, and when the drive was changed meanwhile
     */
    public Received correct(UUID driveId, IfMatch ifMatch, Original original) {
        DriveSubmission submission = reader.read(original);
        String digest = reader.digest(submission);
        return durably.write(() -> {
            Vehicle vehicle = vehicles.hold(vehicleOf(driveId));
            StoredDrive row = drives.findById(driveId).orElseThrow();
            ifMatch.check(row.revision());
            Instant now = clock.instant();
            ReadDrive read = SubmittedDrive.read(driveId, submission, now);
            check(vehicle, driveId, submission, read, now);
            int revision = row.revision() + 1;
            submissions.save(new StoredSubmission(vehicle.id(), driveId, revision, now, original, digest));
            row.file(read, revision);
            drives.flush();
            return new Received(drive(row, read, vehicle), true, Effects.of(driveId, judging.replay(vehicle.id())));
        });
    }

    private void check(Vehicle vehicle, UUID driveId, DriveSubmission submission, ReadDrive read, Instant now) {
        refuseFuture("start", read.record().start(), now);
        read.record().end().ifPresent(end -> refuseFuture("end", end, now));
        if (submission.takenAt() != null) {
            refuseFuture("takenAt", submission.takenAt(), now);
        }
        refuseOtherVehicle(vehicle, read.record());
        refuseOverlap(vehicle, driveId, read);
    }

    private static void refuseFuture(String field, Instant time, Instant now) {
        if (time.isAfter(now.plus(CLOCKS_DIFFER))) {
            throw new Refused(
                    ProblemType.TIME_IN_FUTURE,
                    field + ": found " + time + ", expected a time up to now, " + now + "; check the offset from UTC");
        }
    }

    private static void refuseOtherVehicle(Vehicle vehicle, DriveRecord drive) {
        Optional<Vin> known = vehicle.details().vin();
        drive.scans().stream()
                .flatMap(timed -> timed.scan().vin().stream())
                .filter(read -> known.isPresent() && !known.get().text().equals(read.text()))
                .findFirst()
                .ifPresent(read -> {
                    throw new Refused(
                            ProblemType.OTHER_VEHICLE,
                            "a scan names the vehicle " + read.text() + ", expected "
                                    + known.get().text() + "; send the drive to its own vehicle");
                });
    }

    private void refuseOverlap(Vehicle vehicle, UUID driveId, ReadDrive read) {
        drives.near(vehicle.id(), read.record().start(), read.until()).stream()
                .filter(other -> !other.getId().equals(driveId))
                .filter(other -> read.overlaps(other.startAt(), other.untilAt()))
                .findFirst()
                .ifPresent(other -> {
                    throw new Refused(
                            ProblemType.DRIVE_OVERLAPS,
                            ("from %s to %s this vehicle is already on the drive %s; if this is a better record of that drive,"
                                            + " correct it with PUT /api/v1/drives/%s and its ETag as If-Match; if it is another"
                                            + " drive, send its start")
                                    .formatted(other.startAt(), other.untilAt(), other.getId(), other.getId()),
                            Map.of("existingId", other.getId().toString()));
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
            return Page.of(found, page, d -> new Page.Position(d.startAt(), d.getId()))
                    .map(row -> drive(row, originals.drive(row.getId(), row.revision()), vehicle));
        });
    }

    /**
     * A submission as it came.
     *
     * @param revision the latest where empty
     */
    public Original original(UUID driveId, OptionalInt revision) {
        return durably.read(() -> {
            StoredDrive row = drives.findById(driveId).orElseThrow(() -> Refused.notFound("drive", driveId));
            int wanted = revision.orElse(row.revision());
            return submissions
                    .findByDriveIdAndRevision(driveId, wanted)
                    .orElseThrow(() -> new Refused(
                            ProblemType.NOT_FOUND, "revision: found " + wanted + ", expected 1 to " + row.revision()))
                    .original();
        });
    }

    private UUID vehicleOf(UUID driveId) {
        return drives.vehicleOf(driveId).orElseThrow(() -> Refused.notFound("drive", driveId));
    }

    private static Drive drive(StoredDrive row, ReadDrive read, Vehicle vehicle) {
        return new Drive(
                row.getId(),
                row.revision(),
                row.vehicleId(),
                read.record(),
                DriveFacts.of(read.record().summary(), vehicle.details().ignition(), RuleSet.STANDARD.drive()),
                row.receivedAt(),
                read.warnings());
    }
}
