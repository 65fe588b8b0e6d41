package dev.stayfixed.jobs.api;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.jobs.entry.CloseReason;
import dev.stayfixed.jobs.entry.JobEntry;
import dev.stayfixed.jobs.entry.JobLabels;
import dev.stayfixed.jobs.entry.ReopenReason;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.learning.Comebacks;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.PageAnswer;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Jobs", description = "A job from its opening to its close")
@RestController
@RequestMapping(Link.BASE + "/jobs")
class JobController {

    private final Jobs jobs;
    private final Vehicles vehicles;
    private final Comebacks comebacks;
    private final CaseFiles files;
    private final Clock clock;

    JobController(Jobs jobs, Vehicles vehicles, Comebacks comebacks, CaseFiles files, Clock clock) {
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.comebacks = comebacks;
        this.files = files;
        this.clock = clock;
    }

    @Operation(summary = "Open a job, with faults or with a scan that holds their codes")
    @ApiResponse(responseCode = "201", description = "Created; Location names it", useReturnTypeSchema = true)
    @PostMapping
    ResponseEntity<JobAnswer> open(@Valid @RequestBody JobEntry request) {
        Job job = jobs.open(request.opening(vehicle(request.vehicleId()), clock.instant()));
        return ResponseEntity.created(URI.create(Link.to("jobs", job.id()).href()))
                .eTag(IfMatch.tag(job.version()))
                .body(seen(job));
    }

    private Vehicle vehicle(UUID id) {
        try {
            return vehicles.get(id);
        } catch (Refused unknown) {
            if (unknown.type() != ProblemType.NOT_FOUND) {
                throw unknown;
            }
            throw Refused.content(new Mistake("vehicleId", id, "the id of a vehicle of this shop"));
        }
    }

    @Operation(summary = "Find jobs by state and by a part of reference, complaint, code or vehicle")
    @GetMapping
    PageAnswer<JobAnswer> search(
            @RequestParam(required = false) Job.@Nullable State state,
            @RequestParam(required = false) @Nullable String q,
            @RequestParam(required = false) @Nullable Integer limit,
            @RequestParam(required = false) @Nullable String cursor) {
        Page<Job> found = jobs.search(Optional.ofNullable(state), q, Page.Request.of(limit, cursor));
        Set<UUID> back = comebacks.among(found.items().stream().map(Job::id).toList());
        return PageAnswer.of(found, job -> JobAnswer.of(job, back.contains(job.id())));
    }

    @Operation(summary = "One job: faults, where each stands, repairs")
    @GetMapping("/{id}")
    ResponseEntity<JobAnswer> get(@PathVariable UUID id) {
        return answer(jobs.get(id));
    }

    @Operation(summary = "Change reference and complaint")
    @PutMapping("/{id}")
    ResponseEntity<JobAnswer> relabel(
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody JobLabels request) {
        return answer(jobs.relabel(id, IfMatch.of(ifMatch), request.labels()));
    }

    @Operation(summary = "Close a job; while a fault is not confirmed fixed, only for a reason")
    @PostMapping("/{id}/close")
    ResponseEntity<JobAnswer> close(
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody(required = false) @Nullable CloseReason request) {
        Optional<String> reason = request == null ? Optional.empty() : request.given();
        return answer(jobs.close(id, IfMatch.of(ifMatch), reason));
    }

    @Operation(summary = "Reopen a closed job")
    @PostMapping("/{id}/reopen")
    ResponseEntity<JobAnswer> reopen(
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody ReopenReason request) {
        return answer(jobs.reopen(id, IfMatch.of(ifMatch), request.reason().strip()));
    }

    private JobAnswer seen(Job job) {
        return JobAnswer.of(
                job,
                !comebacks.among(List.of(job.id())).isEmpty(),
                files.ofJob(job.id()).ways(job.id()));
    }

    private ResponseEntity<JobAnswer> answer(Job job) {
        return ResponseEntity.ok().eTag(IfMatch.tag(job.version())).body(seen(job));
    }
}
