package dev.stayfixed.web.api;

import dev.stayfixed.intake.Inspections;
import dev.stayfixed.intake.NextDrives;
import dev.stayfixed.verification.inspection.InspectionOutlook;
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

    private final NextDrives nextDrives;
    private final Inspections inspections;

    OutlookController(NextDrives nextDrives, Inspections inspections) {
        this.nextDrives = nextDrives;
        this.inspections = inspections;
    }

    /** What each rule would likely say. */
    record InspectionAnswer(String caution, List<OutlookAnswer> outlooks) {}

    record OutlookAnswer(String rule, InspectionOutlook.Likely likely, List<String> reasons, String words) {}

    @Operation(summary = "One merged plan for all faults still open, in plain words, with cautions")
    @GetMapping("/jobs/{jobId}/next-drive")
    NextDrives.Outline nextDrive(@PathVariable UUID jobId) {
        return nextDrives.of(jobId);
    }

    @Operation(summary = "Likely ready or not for an inspection, under each rule, because of what")
    @GetMapping("/vehicles/{vehicleId}/inspection")
    InspectionAnswer inspection(@PathVariable UUID vehicleId) {
        return new InspectionAnswer(
                ADVISORY,
                inspections.outlook(vehicleId).stream()
                        .map(outlook ->
                                new OutlookAnswer(outlook.rule(), outlook.likely(), outlook.reasons(), outlook.words()))
                        .toList());
    }
}
