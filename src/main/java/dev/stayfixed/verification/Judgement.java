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

    public Evidence strongest() {
        return evidence.get(0);
    }
}
