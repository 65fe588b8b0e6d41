package dev.stayfixed.verification;

import dev.stayfixed.reason.Reason;
import java.util.List;

/**
 * One (fault, drive) decided.
 *
 * @param driveId as in the drive's record
 * @param evidence strongest first, never empty
 */
public record Judgement(String driveId, Outcome outcome, Reason reason, List<Evidence> evidence) {

    public Judgement {
        evidence = List.copyOf(evidence);
        if (evidence.isEmpty()) {
            throw new IllegalArgumentException("a judgement names its evidence");
        }
    }

    /** The engine was not started in it. */
    static Judgement withoutDrivingCycle(String driveId) {
        Reason reason = Reason.of(TripReason.NO_DRIVING_CYCLE);
        return new Judgement(driveId, Outcome.DID_NOT_RUN, reason, List.of(Evidence.record(reason)));
    }

    /** A second record of a driving cycle that is decided already. */
    Judgement ofTheSameCycle() {
        return new Judgement(driveId, Outcome.RAN_UNPROVEN, Reason.of(TripReason.SAME_CYCLE), evidence);
    }

    /** What a reading after the drive says of it. */
    Judgement decidedLater(UnitState.Trip trip) {
        return trip == UnitState.Trip.PASSED
                ? new Judgement(
                        driveId,
                        Outcome.PASSED,
                        Reason.of(TripReason.LATER_PASSED, strongest().says()),
                        evidence)
                : new Judgement(
                        driveId,
                        Outcome.FAILED,
                        Reason.of(TripReason.LATER_FAILED, strongest().says()),
                        evidence);
    }

    public Evidence strongest() {
        return evidence.get(0);
    }
}
