package dev.stayfixed.judging.api;

import dev.stayfixed.jobs.FaultHistories;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.judging.entry.ConfidenceEntry;
import dev.stayfixed.verification.confidence.AllClear;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.ReasonAnswer;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Confidence", description = "How sure an all-clear is, for a fault that failed only now and then")
@RestController
@RequestMapping(Link.BASE + "/jobs/{jobId}/faults/{faultId}/confidence")
class ConfidenceController {

    private final CaseFiles files;
    private final FaultHistories histories;

    ConfidenceController(CaseFiles files, FaultHistories histories) {
        this.files = files;
        this.histories = histories;
    }

    /**
     * What the clean trips so far prove.
     *
     * @param neededCleanTrips missing where no number that anybody drives is enough
     */
    record ConfidenceAnswer(
            int failed,
            int monitored,
            double wantedConfidence,
            int cleanTrips,
            @Nullable Integer neededCleanTrips,
            double chanceOfFalseAllClear,
            boolean reached,
            String words,
            ReasonAnswer wordsFacts) {

        static ConfidenceAnswer of(AllClear allClear) {
            return new ConfidenceAnswer(
                    allClear.before().failed(),
                    allClear.before().monitored(),
                    allClear.wanted(),
                    allClear.cleanTrips(),
                    allClear.neededTrips().isPresent() ? allClear.neededTrips().getAsInt() : null,
                    allClear.chanceItIsFalse(),
                    allClear.isReached(),
                    ReasonAnswer.text(allClear.said()),
                    ReasonAnswer.of(allClear.said()));
        }
    }

    @Operation(summary = "What the clean trips so far prove, and how many the wanted confidence takes")
    @GetMapping
    ConfidenceAnswer confidence(@PathVariable UUID jobId, @PathVariable UUID faultId) {
        return ConfidenceAnswer.of(files.ofJob(jobId).allClear(jobId, faultId));
    }

    @Operation(summary = "State how often the fault failed before its repair")
    @PutMapping
    ConfidenceAnswer state(
            @PathVariable UUID jobId, @PathVariable UUID faultId, @Valid @RequestBody ConfidenceEntry request) {
        histories.state(jobId, faultId, request.history());
        return ConfidenceAnswer.of(files.ofJob(jobId).allClear(jobId, faultId));
    }
}
