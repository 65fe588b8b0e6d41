package dev.stayfixed.jobs.api;

import dev.stayfixed.jobs.Fault;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.jobs.entry.FaultEntry;
import dev.stayfixed.jobs.entry.FaultTerms;
import dev.stayfixed.jobs.entry.RepairCorrection;
import dev.stayfixed.jobs.entry.RepairEntry;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.learning.Comebacks;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Faults", description = "Faults of a job, their repairs and their verdicts")
@RestController
@RequestMapping(Link.BASE + "/jobs/{jobId}")
class FaultController {

    private final Jobs jobs;
    private final Vehicles vehicles;
    private final CaseFiles files;
    private final Comebacks comebacks;
    private final Clock clock;

    FaultController(Jobs jobs, Vehicles vehicles, CaseFiles files, Comebacks comebacks, Clock clock) {
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.files = files;
        this.comebacks = comebacks;
        this.clock = clock;
    }

    @Operation(summary = "Add a fault to a job")
    @ApiResponse(responseCode = "201", description = "Created; Location names it", useReturnTypeSchema = true)
    @PostMapping("/faults")
    ResponseEntity<FaultAnswer> addFault(@PathVariable UUID jobId, @Valid @RequestBody FaultEntry request) {
        Fault fault = jobs.addFault(jobId, request.terms("", ignition(jobs.get(jobId))));
        return ResponseEntity.created(URI.create(
                        Link.to("jobs", jobId, "faults", fault.id(), "verdict").href()))
                .body(FaultAnswer.of(fault, files.ofJob(jobId).ways(jobId)));
    }

    @Operation(summary = "Change what has to be proven of a fault")
    @PutMapping("/faults/{faultId}")
    ResponseEntity<JobAnswer> reviseFault(
            @PathVariable UUID jobId,
            @PathVariable UUID faultId,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody FaultTerms request) {
        Job before = jobs.get(jobId);
        Fault fault = before.faults().stream()
                .filter(f -> f.id().equals(faultId))
                .findFirst()
                .orElseThrow(() -> Refused.notFound("fault of this job", faultId));
        Job job = jobs.reviseFault(
                jobId,
                faultId,
                IfMatch.of(ifMatch),
                request.of("", fault.terms().code(), ignition(before)));
        return ResponseEntity.ok()
                .eTag(IfMatch.tag(job.version()))
                .body(JobAnswer.of(
                        job,
                        !comebacks.among(List.of(job.id())).isEmpty(),
                        files.ofJob(jobId).ways(jobId)));
    }

    @Operation(summary = "Record a repair; it opens a new attempt for each of its faults")
    @ApiResponse(responseCode = "201", description = "Created; Location names it", useReturnTypeSchema = true)
    @PostMapping("/repairs")
    ResponseEntity<RepairAnswer> repair(@PathVariable UUID jobId, @Valid @RequestBody RepairEntry request) {
        Repair repair = jobs.recordRepair(jobId, request.faultIdsOrAll(), request.details(clock.instant()));
        return ResponseEntity.created(URI.create(Link.to("jobs", jobId).href())).body(RepairAnswer.of(repair));
    }

    @Operation(
            summary = "Put the record of a repair right; what stood there is kept, and everything is judged again",
            description =
                    "What is missing stays as it was recorded; an empty text or list removes it. If-Match is the ETag of the job.")
    @PutMapping("/repairs/{repairId}")
    ResponseEntity<RepairAnswer> correctRepair(
            @PathVariable UUID jobId,
            @PathVariable UUID repairId,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody RepairCorrection request) {
        Repair repair = jobs.correctRepair(
                jobId, repairId, IfMatch.of(ifMatch), request.correction(), request.of(clock.instant()));
        return ResponseEntity.ok().eTag(IfMatch.tag(jobs.get(jobId).version())).body(RepairAnswer.of(repair));
    }

    private Ignition ignition(Job job) {
        return vehicles.get(job.vehicleId()).details().ignition();
    }
}
