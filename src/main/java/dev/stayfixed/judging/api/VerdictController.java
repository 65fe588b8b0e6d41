package dev.stayfixed.judging.api;

import dev.stayfixed.judging.CaseFile;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.judging.FaultProofs;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.UUID;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Faults")
@RestController
@RequestMapping(Link.BASE + "/jobs/{jobId}")
class VerdictController {

    private final CaseFiles files;

    VerdictController(CaseFiles files) {
        this.files = files;
    }

    @Operation(summary = "Where each fault stands, and why")
    @GetMapping("/verdicts")
    VerdictAnswer verdicts(@PathVariable UUID jobId) {
        CaseFile file = files.ofJob(jobId);
        return VerdictAnswer.of(jobId, file.verdicts(jobId), file.proofs(jobId));
    }

    @Operation(summary = "Where one fault stands, and why")
    @GetMapping("/faults/{faultId}/verdict")
    VerdictAnswer.OfFault verdict(@PathVariable UUID jobId, @PathVariable UUID faultId) {
        CaseFile file = files.ofJob(jobId);
        return VerdictAnswer.OfFault.of(
                file.verdict(jobId, faultId), file.proofs(jobId).getOrDefault(faultId, FaultProofs.NONE));
    }
}
