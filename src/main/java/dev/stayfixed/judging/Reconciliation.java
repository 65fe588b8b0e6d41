package dev.stayfixed.judging;

import dev.stayfixed.archive.Archive;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.storage.Durably;
import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.stereotype.Component;

/**
 * After a start, makes everything that is derived agree with the submissions again, whatever a new rule set, a mended reader or a loss
 * left behind; a vehicle that this very program has judged is not touched. Goes on beside the service: until a vehicle's turn has
 * come, what was kept of it before stands.
 */
@Component
class Reconciliation implements ApplicationRunner, Runnable, DisposableBean {

    private static final Logger LOG = LoggerFactory.getLogger(Reconciliation.class);

    private final Shops shops;
    private final Vehicles vehicles;
    private final Archive archive;
    private final Folding folding;
    private final Judging judging;
    private final ProgramName program;
    private final JudgeAgain again;
    private final Durably durably;
    private final Thread worker = new Thread(this::runSoon, "reconciliation");
    private final CountDownLatch stopped = new CountDownLatch(1);

    Reconciliation(
            Shops shops,
            Vehicles vehicles,
            Archive archive,
            Folding folding,
            Judging judging,
            ProgramName program,
            JudgeAgain again,
            Durably durably) {
        this.shops = shops;
        this.vehicles = vehicles;
        this.archive = archive;
        this.folding = folding;
        this.judging = judging;
        this.program = program;
        this.again = again;
        this.durably = durably;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        worker.setDaemon(true);
        worker.start();
    }

    @Override
    public void destroy() throws InterruptedException {
        stopped.countDown();
        worker.join();
    }

    /** Those who have waited for the start are served first; where the database is away, it is tried again until it is back. */
    private void runSoon() {
        try {
            Duration wait = again.judgeAgainAfter();
            while (!stopped.await(wait.toMillis(), TimeUnit.MILLISECONDS)) {
                if (hasRun()) {
                    return;
                }
                wait = again.judgeAgainRetry();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private boolean hasRun() {
        try {
            run();
            return true;
        } catch (RuntimeException e) {
            LOG.warn("what is to be judged again could not be read; it is tried again", e);
            return false;
        }
    }

    /** All that is due, at once. */
    @Override
    public void run() {
        shops.each(this::judgeAgain);
    }

    private void judgeAgain() {
        List<UUID> due = due();
        if (due.isEmpty()) {
            return;
        }
        LOG.info("{} vehicles are judged again", due.size());
        for (UUID vehicleId : due) {
            if (stopped.getCount() == 0) {
                return;
            }
            reconcile(vehicleId);
        }
        LOG.info("{} vehicles were judged again", due.size());
    }

    /** What another program has judged, or none, and what is not all there; everything where that is asked for. */
    private List<UUID> due() {
        if (again.judgeAgain()) {
            return vehicles.all();
        }
        return durably.read(() -> {
            Set<UUID> due = new LinkedHashSet<>(vehicles.judgedByOthers(program.text()));
            due.addAll(archive.incomplete());
            return List.copyOf(due);
        });
    }

    /** A vehicle that cannot be read must not keep the others from being served. */
    private void reconcile(UUID vehicleId) {
        try {
            durably.derive(() -> {
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
