package dev.stayfixed.judging;

import dev.stayfixed.archive.Archive;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.storage.Durably;
import java.util.UUID;
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
    private final Archive archive;
    private final Folding folding;
    private final Judging judging;
    private final Durably durably;
    private final Thread worker = new Thread(this, "reconciliation");
    private volatile boolean stopped;

    Reconciliation(Vehicles vehicles, Archive archive, Folding folding, Judging judging, Durably durably) {
        this.vehicles = vehicles;
        this.archive = archive;
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
                archive.restore(vehicleId);
                folding.changed(vehicleId);
                judging.replay(vehicleId, new VehicleJudged.Cause.Replayed());
            });
        } catch (RuntimeException e) {
            LOG.error("the standing of the faults of vehicle {} could not be computed again", vehicleId, e);
        }
    }
}
