package dev.stayfixed.judging.api;

import dev.stayfixed.jobs.EngineCheck;
import dev.stayfixed.jobs.EngineChecks;
import dev.stayfixed.jobs.entry.EngineCheckEntry;
import dev.stayfixed.jobs.entry.EngineRunEntry;
import dev.stayfixed.jobs.entry.WithdrawalEntry;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.judging.CheckRuns;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Engine checks", description = "What a run of the engine has to show, recorded before and after the repair")
@RestController
@RequestMapping(Link.BASE)
class EngineCheckController {

    private static final String OF_JOB = "/jobs/{jobId}/engine-checks";

    private final EngineChecks checks;
    private final CheckRuns runs;
    private final CaseFiles files;

    EngineCheckController(EngineChecks checks, CheckRuns runs, CaseFiles files) {
        this.checks = checks;
        this.runs = runs;
        this.files = files;
    }

    @Operation(summary = "State a check with the engine running for a fault of a job")
    @ApiResponse(responseCode = "201", description = "Created; Location names it", useReturnTypeSchema = true)
    @PostMapping(OF_JOB)
    ResponseEntity<EngineCheckAnswer> create(@PathVariable UUID jobId, @Valid @RequestBody EngineCheckEntry request) {
        EngineCheck stated = checks.state(jobId, request.stated());
        return ResponseEntity.created(URI.create(
                        Link.to("jobs", jobId, "engine-checks", stated.id()).href()))
                .body(answer(jobId, stated.id()));
    }

    @Operation(summary = "The checks with the engine running of a job, with what their runs came to")
    @GetMapping(OF_JOB)
    List<EngineCheckAnswer> all(@PathVariable UUID jobId) {
        return files.ofJob(jobId).checks(jobId).stream()
                .map(EngineCheckAnswer::of)
                .toList();
    }

    @Operation(summary = "One check with the engine running")
    @GetMapping(OF_JOB + "/{checkId}")
    EngineCheckAnswer get(@PathVariable UUID jobId, @PathVariable UUID checkId) {
        return answer(jobId, checkId);
    }

    @Operation(
            summary = "Take a recorded drive for the run before or after the repair; the earlier choice stays on file")
    @PostMapping(OF_JOB + "/{checkId}/runs")
    EngineCheckAnswer choose(
            @PathVariable UUID jobId, @PathVariable UUID checkId, @Valid @RequestBody EngineRunEntry request) {
        return EngineCheckAnswer.of(runs.choose(jobId, checkId, request.side(), request.driveId()));
    }

    @Operation(summary = "Withdraw a check: it counts no more, and stays on file with the reason")
    @PutMapping(OF_JOB + "/{checkId}/withdrawn")
    EngineCheckAnswer withdraw(
            @PathVariable UUID jobId, @PathVariable UUID checkId, @Valid @RequestBody WithdrawalEntry request) {
        checks.withdraw(jobId, checkId, request.reason().strip());
        return answer(jobId, checkId);
    }

    private EngineCheckAnswer answer(UUID jobId, UUID checkId) {
        return EngineCheckAnswer.of(files.ofJob(jobId).check(jobId, checkId));
    }
}
