package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.OperatingPoint;
import java.util.Optional;

/**
 * Similar conditions of 13 CCR 1968.2 (c): engine speed and load near those of the freeze frame, and the same warm-up status. A
 * misfire or fuel-system fault that stays away elsewhere proves nothing.
 */
final class SimilarConditions {

    private final RuleSet rules;

    SimilarConditions(RuleSet rules) {
        this.rules = rules;
    }

    boolean similar(OperatingPoint stored, OperatingPoint now) {
        double load = rules.loadRelative() ? stored.load() * rules.similarLoad() / 100 : rules.similarLoad();
        return Math.abs(stored.engineSpeed() - now.engineSpeed()) <= rules.similarEngineSpeed()
                && withinRounding(Math.abs(stored.load() - now.load()), load)
                && isWarm(stored) == isWarm(now);
    }

    /** @param freezeFrame where none is known, nothing can be compared, and no drive is known to be similar */
    Finding metIn(DriveSummary summary, Optional<OperatingPoint> freezeFrame) {
        return freezeFrame
                .map(stored -> metIn(summary, stored))
                .orElseGet(
                        () -> Finding.unknown(
                                "no freeze frame of the failure is known, so nothing tells whether it ran"
                                        + " under similar conditions; enter its engine speed, load and coolant temperature with the fault"));
    }

    private Finding metIn(DriveSummary summary, OperatingPoint stored) {
        if (summary.operatingPoints().stream().anyMatch(now -> similar(stored, now))) {
            return Finding.yes("it ran under conditions similar to the freeze frame");
        }
        String needed = "needed within %.0f rpm of %.0f rpm, load within %.0f %s of %.0f %%, engine %s"
                .formatted(
                        rules.similarEngineSpeed(),
                        stored.engineSpeed(),
                        rules.similarLoad(),
                        rules.loadRelative() ? "% relative" : "points",
                        stored.load(),
                        isWarm(stored) ? "warm" : "cold");
        return summary.operatingPoints().isEmpty()
                ? Finding.unknown("no operating point of this drive was recorded; " + needed)
                : Finding.no("no recorded moment was similar to the freeze frame; " + needed);
    }

    private boolean isWarm(OperatingPoint point) {
        return point.coolant() >= rules.warmFrom();
    }

    /** A relative limit such as 20 % of 30 is not exact in binary. */
    private static boolean withinRounding(double difference, double limit) {
        return difference <= limit + 1e-9;
    }
}
