package dev.stayfixed.verification;

import java.util.List;

/**
 * One (fault, drive) decided.
 *
 * @param driveId as in the drive's record
 * @param reason why, in a sentence
 * @param evidence strongest first, never empty
 */
public record Judgement(String driveId, Outcome outcome, String reason, List<Evidence> evidence) {

    public Judgement {
        evidence = List.copyOf(evidence);
        if (evidence.isEmpty()) {
            throw new IllegalArgumentException("a judgement names its evidence");
        }
    }

    /** The engine was not started in it. */
    static Judgement withoutDrivingCycle(String driveId) {
        String reason =
                "the engine was not started in this record, so it is no driving cycle; what the lists say of before counts";
        return new Judgement(driveId, Outcome.DID_NOT_RUN, reason, List.of(Evidence.record(reason)));
    }

    /** A second record of a driving cycle that is decided already. */
    Judgement ofTheSameCycle() {
        return new Judgement(
                driveId,
                Outcome.RAN_UNPROVEN,
                "this record is of the same driving cycle as the one before it, and a cycle counts once",
                evidence);
    }

    /** What a reading after the drive says of it. */
    Judgement decidedLater(UnitState.Trip trip) {
        return trip == UnitState.Trip.PASSED
                ? new Judgement(
                        driveId,
                        Outcome.PASSED,
                        strongest().says() + "; the next reading shows that this trip passed",
                        evidence)
                : new Judgement(
                        driveId,
                        Outcome.FAILED,
                        strongest().says() + "; the next reading shows that this trip failed",
                        evidence);
    }

    public Evidence strongest() {
        return evidence.get(0);
    }
}
