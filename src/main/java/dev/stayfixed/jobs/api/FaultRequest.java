package dev.stayfixed.jobs.api;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.web.api.Words;
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
record FaultRequest(
        @NotBlank(message = "a trouble code, such as P0420") @Size(max = 20, message = "a trouble code, such as P0420")
        String code,

        @Nullable Trips trips,
        @Nullable Integer requiredPasses,
        @Nullable EvidenceGrade weakestEvidence,
        @Nullable MonitorGroup group,

        @Nullable @Size(max = 20, message = "at most 20 conditions")
        List<FaultTerms.@Valid Condition> enablingConditions,

        @Valid FaultTerms.@Nullable Point freezeFrame) {

    RepairedFault terms(String at, Ignition ignition) {
        TroubleCode parsed = Words.parse(at + "code", code, TroubleCode::parse);
        return new FaultTerms(trips, requiredPasses, weakestEvidence, group, enablingConditions, freezeFrame)
                .of(at, parsed, ignition);
    }
}
