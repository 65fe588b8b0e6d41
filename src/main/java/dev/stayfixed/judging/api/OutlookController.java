package dev.stayfixed.judging.api;

import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.judging.NextDrives;
import dev.stayfixed.verification.inspection.InspectionOutlook;
import dev.stayfixed.verification.inspection.InspectionRule;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.ReasonAnswer;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.UUID;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Outlook", description = "What to drive next, and what an inspection would likely say")
@RestController
@RequestMapping(Link.BASE)
class OutlookController {

    private static final String ADVISORY =
            "Advisory only: rules change, and the local rule, the inspector and the service information govern.";

    private final CaseFiles files;

    OutlookController(CaseFiles files) {
        this.files = files;
    }

    /**
     * What to drive.
     *
     * @param plans in order; empty once every fault is decided, or where no conditions are known for those that are open
     * @param unplanned faults for which no conditions are known, each with what is needed instead
     */
    record NextDriveAnswer(List<PlanAnswer> plans, List<String> unplanned) {}

    /**
     * One drive.
     *
     * @param faults that it serves
     * @param lines what to do, in order
     * @param sources where the figures are from
     * @param likelihood how often this car's past drives would have met it, in words
     */
    record PlanAnswer(
            List<String> faults,
            List<String> lines,
            List<ReasonAnswer> lineFacts,
            List<String> cautions,
            List<String> sources,
            String likelihood,
            ReasonAnswer likelihoodFacts) {

        static PlanAnswer of(NextDrives.Plan plan) {
            return new PlanAnswer(
                    plan.faults(),
                    plan.lines().stream().map(ReasonAnswer::text).toList(),
                    plan.lines().stream().map(ReasonAnswer::of).toList(),
                    plan.cautions().stream().map(ReasonAnswer::text).toList(),
                    plan.sources().stream().map(ReasonAnswer::text).toList(),
                    ReasonAnswer.text(plan.likelihood()),
                    ReasonAnswer.of(plan.likelihood()));
        }
    }

    /** What each rule would likely say. */
    record InspectionAnswer(String caution, List<OutlookAnswer> outlooks) {}

    /**
     * What one rule would likely say.
     *
     * @param rule its name and date; {@code ruleKind} names it for machines
     */
    record OutlookAnswer(
            String rule,
            InspectionRule ruleKind,
            InspectionOutlook.Likely likely,
            List<String> reasons,
            List<ReasonAnswer> reasonFacts,
            String words) {

        static OutlookAnswer of(InspectionOutlook outlook) {
            return new OutlookAnswer(
                    ReasonAnswer.text(outlook.rule()),
                    outlook.rule(),
                    outlook.likely(),
                    outlook.reasons().stream().map(ReasonAnswer::text).toList(),
                    outlook.reasons().stream().map(ReasonAnswer::of).toList(),
                    ReasonAnswer.text(outlook.said()));
        }
    }

    @Operation(summary = "One merged plan for all faults still open, in plain words, with cautions")
    @GetMapping("/jobs/{jobId}/next-drive")
    NextDriveAnswer nextDrive(@PathVariable UUID jobId) {
        NextDrives.Outline outline = files.ofJob(jobId).nextDrives(jobId);
        return new NextDriveAnswer(
                outline.plans().stream().map(PlanAnswer::of).toList(),
                outline.unplanned().stream().map(ReasonAnswer::text).toList());
    }

    @Operation(summary = "Likely ready or not for an inspection, under each rule, because of what")
    @GetMapping("/vehicles/{vehicleId}/inspection")
    InspectionAnswer inspection(@PathVariable UUID vehicleId) {
        return new InspectionAnswer(
                ADVISORY,
                files.ofVehicle(vehicleId).inspection().stream()
                        .map(OutlookAnswer::of)
                        .toList());
    }
}
