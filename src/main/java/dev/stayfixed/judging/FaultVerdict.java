package dev.stayfixed.judging;

import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.verification.Verdict;
import dev.stayfixed.verification.VerificationState;
import java.time.Instant;
import java.util.Map;

/**
 * A fault and its verdict.
 *
 * @param drives of the vehicle
 */
public record FaultVerdict(FaultCase faultCase, Verdict verdict, DrivesInOrder drives) {

    /** When each drive of the vehicle began, by the drive's id. */
    public Map<String, Instant> driveStarts() {
        return drives.starts();
    }

    public Standing standing() {
        return standing(verdict.state());
    }

    public Standing standing(VerificationState state) {
        return Standing.of(state, faultCase.fault().requiredPasses());
    }
}
