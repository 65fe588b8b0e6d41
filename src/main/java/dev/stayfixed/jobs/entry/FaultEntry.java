package dev.stayfixed.jobs.entry;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.platform.Given;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Trips;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A fault of a job: its code, and its terms as in {@link FaultTerms}.
 *
 * @param code SAE J2012, such as P0420 or P0420-1F
 */
@Schema(name = "FaultRequest")
public record FaultEntry(
        @NotBlank(message = "a trouble code, such as P0420") @Size(max = 20, message = "a trouble code, such as P0420")
        String code,

        @Nullable Trips trips,
        @Nullable Integer requiredPasses,
        @Nullable EvidenceGrade weakestEvidence,
        @Nullable MonitorGroup group,

        @Nullable @Size(max = EntryLimits.CONDITIONS, message = "at most {max} conditions")
        List<FaultTerms.@Valid Condition> enablingConditions,

        @Valid FaultTerms.@Nullable Point freezeFrame) {

    public RepairedFault terms(String at, Ignition ignition) {
        TroubleCode parsed = Given.parse(at + "code", code, TroubleCode::parse);
        return new FaultTerms(trips, requiredPasses, weakestEvidence, group, enablingConditions, freezeFrame)
                .of(at, parsed, ignition);
    }
}
