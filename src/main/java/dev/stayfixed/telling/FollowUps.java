package dev.stayfixed.telling;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Secret;
import dev.stayfixed.platform.SecretLinks;
import dev.stayfixed.platform.Sha256;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** What was promised to be looked at again, and the secret link under which a calendar program reads it. */
@Service
public class FollowUps implements SecretLinks {

    /** How long the calendar shows a promise that nobody has kept. */
    private static final Duration OVERDUE_SHOWN = Duration.ofDays(60);

    private final StoredFollowUps stored;
    private final Jobs jobs;
    private final Vehicles vehicles;
    private final Durably durably;
    private final Clock clock;

    FollowUps(StoredFollowUps stored, Jobs jobs, Vehicles vehicles, Durably durably, Clock clock) {
        this.stored = stored;
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.durably = durably;
        this.clock = clock;
    }

    /** An entry of the calendar. */
    public record Entry(FollowUp followUp, Optional<String> reference, String vehicle) {}

    public FollowUp promise(UUID jobId, Instant dueAt, String note) {
        return durably.write(() -> {
            Job job = jobs.get(jobId);
            if (job.state() == Job.State.CLOSED) {
                throw new Refused(ProblemType.JOB_CLOSED, "the job is closed; reopen it before promising anything");
            }
            FollowUp made = new FollowUp(UUID.randomUUID(), jobId, 1, dueAt, note, clock.instant(), Optional.empty());
            stored.insert(made);
            return made;
        });
    }

    public FollowUp change(UUID jobId, UUID id, IfMatch ifMatch, Instant dueAt, String note) {
        return durably.write(() -> {
            ifMatch.check(known(jobId, id).version());
            stored.change(id, dueAt, note);
            return known(jobId, id);
        });
    }

    /** Marks it as kept; once more changes nothing. */
    public FollowUp done(UUID jobId, UUID id) {
        return durably.write(() -> {
            known(jobId, id);
            stored.done(id, clock.instant());
            return known(jobId, id);
        });
    }

    public FollowUp get(UUID jobId, UUID id) {
        return durably.read(() -> known(jobId, id));
    }

    /** The next one first. */
    public List<FollowUp> ofJob(UUID jobId) {
        return durably.read(() -> {
            jobs.get(jobId);
            return stored.ofJob(jobId);
        });
    }

    /** A new secret for the calendar's link; the one before it no longer works. */
    public String newLink() {
        String token = Secret.forAddress(24);
        durably.write(() -> {
            durably.hold("calendar link");
            stored.link(Sha256.hex(token), clock.instant());
        });
        return token;
    }

    public void noLink() {
        durably.write(stored::unlink);
    }

    @Override
    public String under() {
        return "calendar";
    }

    @Override
    public Optional<UUID> shopOf(String token) {
        return durably.readThrough(Sha256.hex(token), () -> stored.shopOf(Sha256.hex(token)));
    }

    /** What stands in the calendar of the shop: promises of open jobs that are not kept yet. */
    public List<Entry> calendar(String token) {
        return durably.read(() -> {
            if (!stored.isLink(Sha256.hex(token))) {
                throw new Refused(
                        ProblemType.NOT_FOUND,
                        "no calendar has this address; make a new link with POST /api/v1/calendar-link");
            }
            return stored.notDone(clock.instant().minus(OVERDUE_SHOWN)).stream()
                    .flatMap(followUp -> entry(followUp, jobs.get(followUp.jobId())).stream())
                    .toList();
        });
    }

    private Optional<Entry> entry(FollowUp followUp, Job job) {
        return job.state() == Job.State.CLOSED
                ? Optional.empty()
                : Optional.of(new Entry(
                        followUp,
                        job.labels().reference(),
                        vehicles.get(job.vehicleId()).details().description()));
    }

    private FollowUp known(UUID jobId, UUID id) {
        return stored.find(jobId, id).orElseThrow(() -> Refused.notFound("follow-up", id));
    }
}
