package dev.stayfixed.telling;

import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import dev.stayfixed.jobs.Fault;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.telling.delivery.Background;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.worklist.LastHeard;
import dev.stayfixed.worklist.RepairedJobs;
import java.time.Clock;
import java.time.Duration;
import java.util.EnumSet;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.annotation.Bean;
import org.springframework.stereotype.Component;

/** Notices open jobs of which nothing was heard: no repair and no drive for so many days, while a repair still waits for its proof. */
@Component
class Silence {

    private static final Logger LOG = LoggerFactory.getLogger(Silence.class);

    /** Reminders about one silence; after that somebody has to close the job or call. */
    private static final int MOST_REMINDERS = 3;

    private static final Set<StateName> WAITING =
            EnumSet.of(StateName.WAITING_FOR_FIRST_TRIP, StateName.PASSING, StateName.FAILED_ONCE);

    private final Shops shops;
    private final RepairedJobs repaired;
    private final Jobs jobs;
    private final Vehicles vehicles;
    private final StoredNotices notices;
    private final Announcer announcer;
    private final Durably durably;
    private final Clock clock;

    Silence(
            Shops shops,
            RepairedJobs repaired,
            Jobs jobs,
            Vehicles vehicles,
            StoredNotices notices,
            Announcer announcer,
            Durably durably,
            Clock clock) {
        this.shops = shops;
        this.repaired = repaired;
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.notices = notices;
        this.announcer = announcer;
        this.durably = durably;
        this.clock = clock;
    }

    @Bean
    Background lookForSilence() {
        return new Background(Tasks.recurring("look-for-silence", FixedDelay.ofHours(1))
                .execute((instance, context) -> shops.each(this::look)));
    }

    /** Looks through all open jobs of the shop. One that cannot be read must not keep the others from being looked at. */
    void look() {
        for (LastHeard heard : repaired.lastHeard()) {
            try {
                durably.write(() -> {
                    vehicles.hold(heard.vehicleId());
                    remind(heard);
                });
            } catch (RuntimeException e) {
                LOG.error("the silence of job {} could not be looked at", heard.jobId(), e);
            }
        }
    }

    private void remind(LastHeard heard) {
        Job job = jobs.get(heard.jobId());
        int days = notices.ofJob(job.id()).silentDays().orElse(notices.ofShop().silentDays());
        long silent = Duration.between(heard.at(), clock.instant()).toDays();
        long reminder = Math.min(silent / days, MOST_REMINDERS);
        if (job.state() == Job.State.OPEN && reminder >= 1 && isWaiting(job)) {
            announcer.silent(
                    job,
                    Reason.of(NewsReason.NO_DRIVE_FOR, Part.count(silent)),
                    "silence:" + job.id() + ":" + heard.at() + ":" + reminder);
        }
    }

    private static boolean isWaiting(Job job) {
        return job.faults().stream().map(Fault::standing).anyMatch(s -> WAITING.contains(s.state()));
    }
}
