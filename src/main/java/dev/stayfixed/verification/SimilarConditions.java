package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
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
                .orElseGet(() -> Finding.unknown(Reason.of(TripReason.NO_FREEZE_FRAME)));
    }

    private Finding metIn(DriveSummary summary, OperatingPoint stored) {
        if (summary.operatingPoints().stream().anyMatch(now -> similar(stored, now))) {
            return Finding.yes(Reason.of(TripReason.SIMILAR));
        }
        Reason needed = Reason.of(
                isWarm(stored) ? TripReason.NEEDED_WARM : TripReason.NEEDED_COLD,
                Quantity.whole(rules.similarEngineSpeed(), Unit.RPM),
                Quantity.whole(stored.engineSpeed(), Unit.RPM),
                Quantity.whole(rules.similarLoad(), rules.loadRelative() ? Unit.PERCENT_RELATIVE : Unit.POINT),
                Quantity.whole(stored.load(), Unit.PERCENT));
        return summary.operatingPoints().isEmpty()
                ? Finding.unknown(Reason.of(TripReason.NO_POINT, needed))
                : Finding.no(Reason.of(TripReason.NONE_SIMILAR, needed));
    }

    private boolean isWarm(OperatingPoint point) {
        return point.coolant() >= rules.warmFrom();
    }

    /** A relative limit such as 20 % of 30 is not exact in binary. */
    private static boolean withinRounding(double difference, double limit) {
        return difference <= limit + 1e-9;
    }
}
