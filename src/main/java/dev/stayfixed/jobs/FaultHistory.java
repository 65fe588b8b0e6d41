package dev.stayfixed.jobs;

import dev.stayfixed.verification.confidence.Intermittence;

/**
 * How a fault behaved before its repair.
 *
 * @param before how often it failed
 * @param wantedConfidence 0.5 to 0.999, that the shop wants of the all-clear
 */
public record FaultHistory(Intermittence before, double wantedConfidence) {

    /** Nothing is known of it: any failure rate is as likely as another. */
    public static final FaultHistory UNKNOWN = new FaultHistory(new Intermittence(0, 0), 0.95);
}
