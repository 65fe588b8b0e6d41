package dev.stayfixed.intake;

import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.RepairAttempt;
import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;

/** A drive that lies before the repair of a fault proves nothing of it, and a wrong date is common: so it is said. */
public final class BeforeRepair {

    private BeforeRepair() {}

    /** When the first repair of the fault was done, where its job is open and the drive began before it. */
    public static Optional<Instant> repair(String driveId, FaultVerdict verdict) {
        Optional<Instant> start = verdict.drives().start(driveId);
        if (start.isEmpty() || verdict.faultCase().job().closedAt().isPresent()) {
            return Optional.empty();
        }
        return verdict.faultCase().repairs().stream()
                .map(RepairAttempt::at)
                .min(Comparator.naturalOrder())
                .filter(start.get()::isBefore);
    }

    /** Why a drive does not count, and what to do about it; empty where it does, or where its job is closed. */
    static Optional<Reason> reason(String driveId, FaultVerdict verdict) {
        if (verdict.faultCase().repairs().isEmpty()
                && verdict.faultCase().job().closedAt().isEmpty()
                && verdict.drives().start(driveId).isPresent()) {
            return Optional.of(Reason.of(EffectReason.NO_REPAIR_YET));
        }
        return repair(driveId, verdict).map(at -> Reason.of(EffectReason.BEFORE_THE_REPAIR, new Part.Minute(at)));
    }
}
