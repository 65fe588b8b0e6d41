package dev.stayfixed.jobs.api;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.EnablingCondition;
import dev.stayfixed.jobs.Fault;
import dev.stayfixed.jobs.entry.FaultTerms;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.platform.Given;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.WaysToProve;
import dev.stayfixed.web.api.ReasonAnswer;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A fault of a job: what has to be proven, and where it stands.
 *
 * @param proof what will prove it with the reader at hand, the strongest and the cheapest way; missing in lists of jobs
 */
record FaultAnswer(
        UUID id,
        String code,
        Trips trips,
        int requiredPasses,
        MonitorGroup group,
        EvidenceGrade weakestEvidence,
        List<Limits> enablingConditions,
        FaultTerms.@Nullable Point freezeFrame,
        StandingAnswer standing,
        @Nullable String proof,
        @Nullable ReasonAnswer proofFacts) {

    /** An enabling condition with the unit of its limits. */
    record Limits(
            DriveQuantity quantity,
            @Nullable Double min,
            @Nullable Double max,
            String unit) {
        static Limits of(EnablingCondition c) {
            return new Limits(
                    c.quantity(),
                    Given.orNull(c.min()),
                    Given.orNull(c.max()),
                    c.quantity().unit());
        }
    }

    static FaultAnswer of(Fault fault, Map<UUID, WaysToProve> proofs) {
        WaysToProve ways = proofs.get(fault.id());
        RepairedFault terms = fault.terms();
        return new FaultAnswer(
                fault.id(),
                terms.code().text(),
                terms.trips(),
                terms.requiredPasses(),
                terms.group(),
                terms.weakestAccepted(),
                terms.enablingConditions().stream().map(Limits::of).toList(),
                terms.freezeFrame().map(FaultTerms.Point::of).orElse(null),
                StandingAnswer.of(fault.standing()),
                ways == null ? null : ReasonAnswer.text(ways.sentence()),
                ways == null ? null : ReasonAnswer.of(ways.inBrief()));
    }
}
