package dev.stayfixed.intake;

import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.storage.Durably;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.stereotype.Component;

/**
 * After a start, makes everything that is derived agree with the submissions again, whatever a crash or a new rule set left behind.
 * Goes on beside the service: until a vehicle's turn has come, what was kept of it before stands.
 */
@Component
class Reconciliation implements ApplicationRunner, Runnable, DisposableBean {

    private static final Logger LOG = LoggerFactory.getLogger(Reconciliation.class);

    private final Vehicles vehicles;
    private final StoredSubmissions submissions;
    private final StoredDrives drives;
    private final StoredPictures pictures;
    private final Originals originals;
    private final Folding folding;
    private final Judging judging;
    private final Durably durably;
    private final Thread worker = new Thread(this, "reconciliation");
    private volatile boolean stopped;

    Reconciliation(
            Vehicles vehicles,
            StoredSubmissions submissions,
            StoredDrives drives,
            StoredPictures pictures,
            Originals originals,
            Folding folding,
            Judging judging,
            Durably durably) {
        this.vehicles = vehicles;
        this.submissions = submissions;
        this.drives = drives;
        this.pictures = pictures;
        this.originals = originals;
        this.folding = folding;
        this.judging = judging;
        this.durably = durably;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        worker.setDaemon(true);
        worker.start();
    }

    @Override
    public void destroy() throws InterruptedException {
        stopped = true;
        worker.join();
    }

    /** All of it, at once. */
    @Override
    public void run() {
        for (UUID vehicleId : vehicles.all()) {
            if (stopped) {
                return;
            }
            reconcile(vehicleId);
        }
    }

    /** A vehicle that cannot be read must not keep the others from being served. */
    private void reconcile(UUID vehicleId) {
        try {
            durably.write(() -> {
                vehicles.hold(vehicleId);
                fileDrives(vehicleId);
                drawLogs(vehicleId);
                folding.changed(vehicleId);
                judging.replay(vehicleId, new VehicleJudged.Cause.Replayed());
            });
        } catch (RuntimeException e) {
            LOG.error("the standing of the faults of vehicle {} could not be computed again", vehicleId, e);
        }
    }

    private void fileDrives(UUID vehicleId) {
        Map<UUID, StoredDrive> filed = drives.findByVehicleId(vehicleId).stream()
                .collect(Collectors.toMap(StoredDrive::getId, Function.identity()));
        for (StoredSubmission latest : submissions.latest(vehicleId)) {
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

    private void drawLogs(UUID vehicleId) {
        Set<UUID> kept = pictures.kept(vehicleId);
        for (StoredSubmission latest : submissions.latest(vehicleId)) {
            if (latest.log().isPresent() && !kept.contains(latest.driveId())) {
                originals
                        .picture(latest.driveId(), latest.revision())
                        .ifPresent(picture -> pictures.save(latest.driveId(), latest.revision(), picture));
            }
        }
    }

    private java.time.Instant firstReceipt(StoredSubmission latest) {
        return submissions
                .findByDriveIdAndRevision(latest.driveId(), 1)
                .orElse(latest)
                .receivedAt();
    }
}
