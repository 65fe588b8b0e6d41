package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.reason.Unit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Whether a drive of which only a few numbers are known has met a set of conditions for certain. Stricter than
 * {@link Condition#inSummary}, which asks whether it may have: times in total, temperatures reached and values at the start follow
 * from the numbers; an unbroken time, an upper limit while driving and an order do not.
 */
public final class SummaryProof {

    /** A running engine never turns slower; the lowest speed that still means no more than that it runs. */
    private static final double SLOWEST_IDLE = 500;

    /** 25 mph in whole km/h, of which FAST_TIME tells the time. */
    private static final double FAST = 40;

    private SummaryProof() {}

    /** Empty where the numbers can not tell. */
    public static Optional<Finding> of(ConditionSet set, DriveSummary summary) {
        if (set.inOrder() && set.conditions().size() > 1) {
            return Optional.empty();
        }
        List<Optional<Finding>> found = set.conditions().stream()
                .map(condition -> of(condition, summary))
                .toList();
        List<Finding> missed =
                found.stream().flatMap(Optional::stream).filter(Finding::isNo).toList();
        if (!missed.isEmpty()) {
            return Optional.of(Finding.no(reasons(missed)));
        }
        boolean all = found.stream()
                .allMatch(finding -> finding.filter(Finding::isYes).isPresent());
        return all
                ? Optional.of(Finding.yes(
                        reasons(found.stream().flatMap(Optional::stream).toList())))
                : Optional.empty();
    }

    private static Reason reasons(List<Finding> findings) {
        return Shape.EACH.of(findings.stream().map(Finding::reason).toList());
    }

    private static Optional<Finding> of(Condition condition, DriveSummary summary) {
        if (condition instanceof Hold hold) {
            return isTotal(hold) ? total(hold, summary) : Optional.empty();
        }
        if (condition instanceof Reach reach
                && (reach.within().isPresent() || !reach.whileIn().isEmpty())) {
            return Optional.empty();
        }
        return condition.inSummary(summary).filter(finding -> finding.isYes() || finding.isNo());
    }

    private static boolean isTotal(Hold hold) {
        return !hold.unbroken()
                && hold.whileIn().isEmpty()
                && Double.isInfinite(hold.range().max());
    }

    private static Optional<Finding> total(Hold hold, DriveSummary summary) {
        SignalRange range = hold.range();
        if (range.signal() == Signal.ENGINE_SPEED && range.min() <= SLOWEST_IDLE) {
            return time(hold, DriveQuantity.RUN_TIME, summary);
        }
        return range.signal() == Signal.VEHICLE_SPEED && range.min() <= FAST
                ? time(hold, DriveQuantity.FAST_TIME, summary)
                : Optional.empty();
    }

    private static Optional<Finding> time(Hold hold, DriveQuantity quantity, DriveSummary summary) {
        OptionalDouble found = summary.value(quantity);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        double needed = hold.atLeast().toMillis() / 1000.0;
        Reason facts = Reason.of(
                ConditionReason.TIME_OF,
                quantity,
                Quantity.of(found.getAsDouble(), Unit.SECOND),
                Quantity.of(needed, Unit.SECOND));
        return Optional.of(found.getAsDouble() >= needed ? Finding.yes(facts) : Finding.no(facts));
    }
}
