package dev.stayfixed.judging.api;

import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.jobs.AgreedConditions;
import dev.stayfixed.jobs.ConditionsOfFaults;
import dev.stayfixed.jobs.FaultConditions;
import dev.stayfixed.judging.entry.ConditionsEntry;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.net.URI;
import java.util.List;
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

@Tag(name = "Conditions", description = "What a monitor needs before it runs, held against recorded drives")
@RestController
@RequestMapping(Link.BASE)
class ConditionController {

    private static final String OF_FAULT = "/jobs/{jobId}/faults/{faultId}/conditions";

    private final ConditionsOfFaults conditions;

    ConditionController(ConditionsOfFaults conditions) {
        this.conditions = conditions;
    }

    @Operation(summary = "Name the conditions of a fault, from service information, or adopt the typical ones")
    @ApiResponse(responseCode = "201", description = "Created; Location names them", useReturnTypeSchema = true)
    @PostMapping(OF_FAULT)
    ResponseEntity<ConditionsAnswer> create(
            @PathVariable UUID jobId, @PathVariable UUID faultId, @Valid @RequestBody ConditionsEntry request) {
        AgreedConditions agreed = request.agreed(conditions.get(jobId, faultId));
        FaultConditions fault = conditions.agree(jobId, faultId, agreed);
        return ResponseEntity.created(URI.create(
                        Link.to("jobs", jobId, "faults", faultId, "conditions").href()))
                .eTag(IfMatch.tag(fault.jobVersion()))
                .body(ConditionsAnswer.of(fault, agreed));
    }

    @Operation(summary = "Replace the conditions of a fault; If-Match is the ETag of the job")
    @PutMapping(OF_FAULT)
    ResponseEntity<ConditionsAnswer> replace(
            @PathVariable UUID jobId,
            @PathVariable UUID faultId,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody ConditionsEntry request) {
        AgreedConditions agreed = request.agreed(conditions.get(jobId, faultId));
        FaultConditions fault = conditions.replace(jobId, faultId, IfMatch.of(ifMatch), agreed);
        return ResponseEntity.ok().eTag(IfMatch.tag(fault.jobVersion())).body(ConditionsAnswer.of(fault, agreed));
    }

    @Operation(summary = "The conditions of a fault")
    @GetMapping(OF_FAULT)
    ResponseEntity<ConditionsAnswer> get(@PathVariable UUID jobId, @PathVariable UUID faultId) {
        FaultConditions fault = conditions.get(jobId, faultId);
        AgreedConditions agreed = fault.agreed()
                .orElseThrow(() -> new Refused(
                        ProblemType.NOT_FOUND,
                        "no conditions were named for this fault; POST some from service information to this address, or look"
                                + " at GET /api/v1/conditions/typical?group=" + fault.group()));
        return ResponseEntity.ok().eTag(IfMatch.tag(fault.jobVersion())).body(ConditionsAnswer.of(fault, agreed));
    }

    @Operation(
            summary =
                    "Typical conditions by monitor group and kind of circuit; the service information of a vehicle overrides them")
    @GetMapping("/conditions/typical")
    List<ConditionsAnswer.Typical> typical(@RequestParam(required = false) @Nullable MonitorGroup group) {
        return (group == null ? TypicalConditions.all() : TypicalConditions.of(group))
                .stream().map(ConditionsAnswer.Typical::of).toList();
    }
}
