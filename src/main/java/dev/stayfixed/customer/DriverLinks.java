package dev.stayfixed.customer;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.platform.LinkToken;
import dev.stayfixed.platform.SecretLinks;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Service;

/**
 * Links to the driver's page of a job. A job can have several, because a sheet that is printed again carries a new one; revoking ends
 * them all. They outlast the job: a driver whose lamp comes back after it was closed can say so.
 */
@Service
public class DriverLinks implements SecretLinks {

    private static final Logger LOG = LoggerFactory.getLogger(DriverLinks.class);

    private final StoredDriverLinks links;
    private final Jobs jobs;
    private final Durably durably;
    private final Clock clock;
    private final Duration lifetime;

    DriverLinks(StoredDriverLinks links, Jobs jobs, Durably durably, Clock clock, LinkSettings settings) {
        this.links = links;
        this.jobs = jobs;
        this.durably = durably;
        this.clock = clock;
        this.lifetime = settings.lifetime();
    }

    /**
     * Makes a link.
     *
     * @throws Refused when the job is closed
     */
    public DriverLink issue(UUID jobId) {
        return durably.write(() -> {
            if (jobs.get(jobId).state() == Job.State.CLOSED) {
                throw new Refused(
                        ProblemType.JOB_CLOSED,
                        "the job is closed; links that were made before go on, a new one needs the job reopened");
            }
            Instant now = clock.instant();
            DriverLink link = new DriverLink(jobId, LinkToken.make(), now, now.plus(lifetime));
            links.add(link, LinkToken.hash(link.token()));
            return link;
        });
    }

    /**
     * Lets every link of the job that was not revoked work for its whole lifetime from now on, also one that has run out.
     *
     * @return how many there are
     */
    public int renew(UUID jobId) {
        return durably.write(
                () -> links.renew(jobs.get(jobId).id(), clock.instant().plus(lifetime)));
    }

    /**
     * Ends every link of the job.
     *
     * @return how many had not ended before
     */
    public int revoke(UUID jobId) {
        return durably.write(() -> links.revoke(jobs.get(jobId).id(), clock.instant()));
    }

    @Override
    public String under() {
        return "d";
    }

    @Override
    public Optional<UUID> shopOf(String token) {
        String hash = LinkToken.hash(token);
        return LinkToken.hasForm(token) ? durably.readThrough(hash, () -> links.shopOf(hash)) : Optional.empty();
    }

    /** What a token opens at this moment, among the links of the shop. */
    public Visit visit(String token) {
        if (!LinkToken.hasForm(token)) {
            return new Visit.Unknown();
        }
        return durably.read(
                () -> links.find(LinkToken.hash(token)).map(this::visit).orElseGet(Visit.Unknown::new));
    }

    private Visit visit(StoredDriverLinks.Row row) {
        if (row.revokedAt().isPresent()) {
            return new Visit.Ended(Visit.Reason.REVOKED);
        }
        if (!clock.instant().isBefore(row.expiresAt())) {
            return new Visit.Ended(Visit.Reason.EXPIRED);
        }
        boolean closed = jobs.get(row.jobId()).state() == Job.State.CLOSED;
        return new Visit.Welcome(row.id(), row.jobId(), row.expiresAt(), row.opened(), closed);
    }

    /** Notes that the driver's page was opened by a link; only the first time writes, and a note that fails keeps no page back. */
    public void opened(Visit.Welcome welcome) {
        if (welcome.openedBefore()) {
            return;
        }
        try {
            durably.write(() -> {
                links.opened(welcome.linkId(), clock.instant());
                return welcome;
            });
        } catch (RuntimeException e) {
            LOG.warn("that link {} was opened could not be noted", welcome.linkId(), e);
        }
    }

    /** The link that was made last, where it still works. */
    public Optional<HandedOver> handedOver(UUID jobId) {
        return durably.read(() -> links.working(jobId, clock.instant()).stream().findFirst());
    }

    /** Which of these drives came in through a driver's page. */
    public Set<UUID> loggedAmong(Set<UUID> driveIds) {
        return durably.read(() -> links.loggedAmong(driveIds));
    }
}
