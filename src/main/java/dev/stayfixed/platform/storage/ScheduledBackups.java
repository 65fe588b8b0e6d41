package dev.stayfixed.platform.storage;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;

/** Backups that nobody has to ask for. When one is due is told by the last one that is there, so restarts change nothing. */
final class ScheduledBackups implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(ScheduledBackups.class);

    /** How long one that failed waits, at most, and one that is due. */
    private static final Duration LOOK = Duration.ofMinutes(5);

    private final CopiedBackups backups;
    private final Duration every;
    private final int keep;
    private final Clock clock;
    private final ScheduledExecutorService alarm = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "backups");
        thread.setDaemon(true);
        return thread;
    });

    ScheduledBackups(CopiedBackups backups, Duration every, int keep, Clock clock) {
        this.backups = backups;
        this.every = every;
        this.keep = keep;
        this.clock = clock;
    }

    @EventListener(ApplicationReadyEvent.class)
    void begin() {
        long look = Math.min(LOOK.toMillis(), every.toMillis());
        Future<?> unused = alarm.scheduleWithFixedDelay(this::look, 0, look, TimeUnit.MILLISECONDS);
    }

    private void look() {
        try {
            takeIfDue();
        } catch (IOException | RuntimeException e) {
            LOG.error("the scheduled backup was not made; it is tried again", e);
        }
    }

    /** Whether one was made. */
    boolean takeIfDue() throws IOException {
        BackupFolder folder = backups.folder();
        Instant due = folder.lastScheduled().map(last -> last.plus(every)).orElse(Instant.MIN);
        if (clock.instant().isBefore(due)) {
            return false;
        }
        backups.take(Backups.By.SCHEDULE);
        folder.keepScheduled(keep);
        return true;
    }

    /** Waits for one that is in work. */
    @Override
    public void close() {
        alarm.shutdown();
        try {
            if (!alarm.awaitTermination(25, TimeUnit.SECONDS)) {
                LOG.warn("a backup was still being made when the service ended; it is not there");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
