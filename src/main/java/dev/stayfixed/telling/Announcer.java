package dev.stayfixed.telling;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.JobMoved;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.judging.VehicleJudged;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.telling.delivery.DeliveryGivenUp;
import dev.stayfixed.telling.delivery.Outbox;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import tools.jackson.databind.json.JsonMapper;

/** Writes down what happened, in the transaction in which it happened; there is no event without its cause, and no cause without. */
@Service
public class Announcer {

    private static final int LONGEST_SUMMARY = 1000;

    private final EventIds ids = new EventIds();
    private final StoredEvents events;
    private final Jobs jobs;
    private final Vehicles vehicles;
    private final Shops shops;
    private final Outbox outbox;
    private final ApplicationEventPublisher publisher;
    private final Durably durably;
    private final JsonMapper json;
    private final Clock clock;

    Announcer(
            StoredEvents events,
            Jobs jobs,
            Vehicles vehicles,
            Shops shops,
            Outbox outbox,
            ApplicationEventPublisher publisher,
            Durably durably,
            JsonMapper json,
            Clock clock) {
        this.events = events;
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.shops = shops;
        this.outbox = outbox;
        this.publisher = publisher;
        this.durably = durably;
        this.json = json;
        this.clock = clock;
    }

    @EventListener
    void on(VehicleJudged judged) {
        Findings.of(judged, jobId -> jobs.get(jobId).state() == Job.State.CLOSED)
                .forEach(finding -> {
                    Story story = story(finding);
                    tell(finding.kind(), story, finding.occasion());
                });
    }

    /** With the job its reminders end; reopening brings them back with the next silence. */
    @EventListener
    void on(JobMoved moved) {
        if (moved.step() == JobMoved.Step.CLOSED) {
            outbox.cancelKind(moved.jobId(), EventKind.NOTHING_HEARD.name());
            tell(EventKind.JOB_CLOSED, moved);
        } else if (moved.step() == JobMoved.Step.REOPENED) {
            tell(EventKind.JOB_REOPENED, moved);
        }
    }

    private void tell(EventKind kind, JobMoved moved) {
        Job job = jobs.get(moved.jobId());
        Part reason = job.closeReason()
                .<Part>map(said -> Reason.of(NewsReason.CLOSED_BECAUSE, Part.verbatim(said)))
                .orElse(kind);
        tell(kind, aboutJob(job, reason), "job:" + job.id() + ":" + UUID.randomUUID());
    }

    @EventListener
    void on(DeliveryGivenUp lost) {
        if (lost.delivery().kind().equals(EventKind.TEST.name())) {
            return;
        }
        Reason summary = Reason.of(
                NewsReason.NOT_DELIVERED,
                Part.verbatim(lost.delivery().channel()),
                EventKind.valueOf(lost.delivery().kind()),
                Part.verbatim(lost.why()));
        write(
                EventKind.DELIVERY_GIVEN_UP,
                lost.delivery().jobId(),
                Optional.empty(),
                words(summary),
                Map.of("deliveryId", lost.delivery().id(), "detail", lost.why()),
                "given-up:" + lost.delivery().id());
    }

    /**
     * Tells that a job's repair did not last, as a new job shows.
     *
     * @param jobId the new job
     */
    public void cameBack(UUID jobId, Reason reason, String occasion) {
        tell(EventKind.CAME_BACK, aboutJob(jobs.get(jobId), reason), occasion);
    }

    /** Tells that nothing was heard of an open job; once for each occasion. */
    void silent(Job job, Reason reason, String occasion) {
        tell(EventKind.NOTHING_HEARD, aboutJob(job, reason), occasion);
    }

    /** Tells what a drive shows that nobody knew; once for each occasion. */
    void alert(EventKind kind, UUID jobId, Reason reason, String driveId, String occasion) {
        tell(kind, aboutJob(jobs.get(jobId), reason, driveId), occasion);
    }

    /**
     * Takes back what was told, and tells that.
     *
     * @param occasions how their occasions begin
     * @param still occasions that hold
     */
    void takeBack(String occasions, List<String> still, Reason why) {
        events.told(occasions).stream()
                .filter(told -> !still.contains(told.occasion()))
                .forEach(told -> takeBack(told, why));
    }

    private void takeBack(StoredEvents.Told told, Reason why) {
        Event event = told.event();
        events.takeBack(event.id(), told.occasion(), clock.instant());
        event.jobId()
                .ifPresent(jobId -> tell(
                        EventKind.ALERT_TAKEN_BACK,
                        aboutJob(
                                jobs.get(jobId),
                                Reason.of(NewsReason.NO_LONGER_HOLDS, why, Part.verbatim(event.summary()))),
                        "taken-back:" + event.id()));
    }

    private void tell(EventKind kind, Story story, String occasion) {
        if (events.isKnown(occasion)) {
            return;
        }
        Event event = write(
                kind,
                Optional.of(story.jobId()),
                Optional.ofNullable(story.faultId()),
                words(Reason.of(NewsReason.NEWS, story.about(), kind, Part.verbatim(sentence(story.reason())))),
                story,
                occasion);
        publisher.publishEvent(new EventWritten(event, story));
    }

    private static String sentence(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1) + (words.endsWith(".") ? "" : ".");
    }

    /** Writes an event that is about no job, for one receiver alone. */
    public Event test(Reason about) {
        String summary = words(about);
        return write(
                EventKind.TEST,
                Optional.empty(),
                Optional.empty(),
                summary,
                Map.of("words", summary),
                "test:" + UUID.randomUUID());
    }

    private Event write(
            EventKind kind,
            Optional<UUID> jobId,
            Optional<UUID> faultId,
            String summary,
            Object content,
            String occasion) {
        Instant now = clock.instant();
        String sentence = summary.length() > LONGEST_SUMMARY ? summary.substring(0, LONGEST_SUMMARY) : summary;
        Event event = new Event(
                ids.next(now), kind, now, jobId, faultId, sentence, json.writeValueAsString(content), Optional.empty());
        return durably.write(() -> {
            events.insert(event, occasion);
            return event;
        });
    }

    private Story story(FaultNews finding) {
        Job job = jobs.get(finding.verdict().faultCase().jobId());
        var fault = finding.verdict().faultCase();
        var now = finding.verdict().standing();
        return new Story(
                job.id(),
                job.labels().reference().orElse(null),
                vehicle(job).details().description(),
                job.state() == Job.State.CLOSED,
                fault.faultId(),
                fault.fault().code().text(),
                words(fault.fault().group()),
                words(fault.standing().said()),
                words(now.said()),
                now.passes().isPresent() ? now.passes().getAsInt() : null,
                now.needed(),
                words(finding.reason()),
                finding.verdict().verdict().next().map(this::words).orElse(null),
                finding.driveId().orElse(null));
    }

    private Story aboutJob(Job job, Part reason) {
        return aboutJob(job, reason, null);
    }

    private Story aboutJob(Job job, Part reason, @Nullable String driveId) {
        return new Story(
                job.id(),
                job.labels().reference().orElse(null),
                vehicle(job).details().description(),
                job.state() == Job.State.CLOSED,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                words(reason),
                null,
                driveId);
    }

    /** In the units of the shop. */
    private String words(Part said) {
        return shops.settings().units().words(said);
    }

    private Vehicle vehicle(Job job) {
        return vehicles.get(job.vehicleId());
    }
}
