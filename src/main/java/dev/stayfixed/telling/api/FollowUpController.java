package dev.stayfixed.telling.api;

import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.telling.FollowUp;
import dev.stayfixed.telling.FollowUps;
import dev.stayfixed.telling.ServiceAddress;
import dev.stayfixed.telling.entry.FollowUpEntry;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.PageAnswer;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.net.URI;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Follow-ups", description = "What was promised to be looked at again, also as a calendar")
@RestController
@RequestMapping(Link.BASE)
class FollowUpController {

    private final FollowUps followUps;
    private final ServiceAddress service;

    FollowUpController(FollowUps followUps, ServiceAddress service) {
        this.followUps = followUps;
        this.service = service;
    }

    /** A promise as it stands. */
    record FollowUpAnswer(
            UUID id,
            UUID jobId,
            Instant dueAt,
            String note,
            Instant madeAt,
            @Nullable Instant doneAt) {
        static FollowUpAnswer of(FollowUp f) {
            return new FollowUpAnswer(
                    f.id(),
                    f.jobId(),
                    f.dueAt(),
                    f.note(),
                    f.madeAt(),
                    f.doneAt().orElse(null));
        }
    }

    /** Where the calendar is; whoever knows this address can read it. */
    record CalendarLink(URI url) {}

    @Operation(summary = "Promise a follow-up")
    @PostMapping("/jobs/{jobId}/follow-ups")
    ResponseEntity<FollowUpAnswer> promise(@PathVariable UUID jobId, @Valid @RequestBody FollowUpEntry request) {
        FollowUp made = followUps.promise(jobId, request.dueAt(), request.note().strip());
        return ResponseEntity.created(URI.create(
                        Link.to("jobs", jobId, "follow-ups", made.id()).href()))
                .eTag(IfMatch.tag(made.version()))
                .body(FollowUpAnswer.of(made));
    }

    @Operation(summary = "The follow-ups of a job, the next one first")
    @GetMapping("/jobs/{jobId}/follow-ups")
    PageAnswer<FollowUpAnswer> ofJob(@PathVariable UUID jobId) {
        return new PageAnswer<>(
                followUps.ofJob(jobId).stream().map(FollowUpAnswer::of).toList(), null);
    }

    @Operation(summary = "One follow-up")
    @GetMapping("/jobs/{jobId}/follow-ups/{id}")
    ResponseEntity<FollowUpAnswer> get(@PathVariable UUID jobId, @PathVariable UUID id) {
        return answer(followUps.get(jobId, id));
    }

    @Operation(summary = "Move a follow-up, or change what was promised")
    @PutMapping("/jobs/{jobId}/follow-ups/{id}")
    ResponseEntity<FollowUpAnswer> change(
            @PathVariable UUID jobId,
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody FollowUpEntry request) {
        return answer(followUps.change(
                jobId, id, IfMatch.of(ifMatch), request.dueAt(), request.note().strip()));
    }

    @Operation(summary = "Mark a follow-up as kept")
    @PostMapping("/jobs/{jobId}/follow-ups/{id}/done")
    ResponseEntity<FollowUpAnswer> done(@PathVariable UUID jobId, @PathVariable UUID id) {
        return answer(followUps.done(jobId, id));
    }

    @Operation(summary = "Make a secret link for calendar programs; the link before it stops working")
    @PostMapping("/calendar-link")
    CalendarLink link() {
        return new CalendarLink(service.of("/calendar/" + followUps.newLink() + ".ics"));
    }

    @Operation(summary = "Withdraw the calendar's link")
    @DeleteMapping("/calendar-link")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void unlink() {
        followUps.noLink();
    }

    private static ResponseEntity<FollowUpAnswer> answer(FollowUp followUp) {
        return ResponseEntity.ok().eTag(IfMatch.tag(followUp.version())).body(FollowUpAnswer.of(followUp));
    }
}
