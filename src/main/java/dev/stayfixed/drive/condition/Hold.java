package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A signal stays inside limits for a time.
 *
 * @param unbroken in one piece; otherwise all pieces are added up
 * @param whileIn time counts only while all of these are in range too
 */
public record Hold(SignalRange range, Duration atLeast, boolean unbroken, List<SignalRange> whileIn)
        implements Condition {

    private static final double STANDSTILL = 5;
    private static final double RUNNING = 500;
    private static final double FAST = 25 * 1.609344;

    public Hold {
        whileIn = List.copyOf(whileIn);
        if (atLeast.isNegative() || atLeast.isZero()) {
            throw new IllegalArgumentException(
                    range.signal().words() + ": found a time of " + atLeast + ", expected more than 0");
        }
    }

    public static Hold unbroken(SignalRange range, Duration atLeast, SignalRange... whileIn) {
        return new Hold(range, atLeast, true, List.of(whileIn));
    }

    public static Hold cumulative(SignalRange range, Duration atLeast, SignalRange... whileIn) {
        return new Hold(range, atLeast, false, List.of(whileIn));
    }

    @Override
    public Reason said() {
        return SignalRange.during(
                Reason.of(
                        unbroken ? ConditionReason.HELD_UNBROKEN : ConditionReason.HELD_IN_TOTAL,
                        range.said(),
                        Part.Time.length(atLeast.toMillis())),
                whileIn);
    }

    @Override
    public <T> T match(Cases<T> cases) {
        return cases.hold(this);
    }

    @Override
    public Phase phase() {
        if (isStandstill()) {
            return whileIn.stream().anyMatch(Hold::isWarm) ? Phase.WARM_IDLE : Phase.IDLE;
        }
        return whileIn.stream().anyMatch(Hold::isReleased) || isReleased(range) ? Phase.COAST : Phase.CRUISE;
    }

    private boolean isStandstill() {
        return range.signal() == Signal.VEHICLE_SPEED && range.max() <= STANDSTILL;
    }

    /** No more is asked than that the engine turns by itself. */
    private boolean isRunning() {
        return range.signal() == Signal.ENGINE_SPEED && range.min() <= RUNNING && Double.isInfinite(range.max());
    }

    private static boolean isWarm(SignalRange range) {
        return range.signal() == Signal.COOLANT && range.min() >= 60;
    }

    private static boolean isReleased(SignalRange range) {
        return (range.signal() == Signal.PEDAL || range.signal() == Signal.THROTTLE) && range.max() <= 25;
    }

    @Override
    public Reason toDo() {
        Reason piece = Reason.of(
                unbroken ? PlanReason.WITHOUT_BREAK : PlanReason.IN_PIECES, Part.Time.length(atLeast.toMillis()));
        return switch (phase()) {
            case IDLE, WARM_IDLE ->
                SignalRange.during(Reason.of(PlanReason.LET_IDLE, piece), whileIn)
                        .asSentence();
            case COAST -> Reason.of(PlanReason.COAST_FOR, piece, SignalRange.during(range.said(), whileIn));
            default ->
                SignalRange.during(
                                isRunning()
                                        ? Reason.of(PlanReason.LET_RUN, piece)
                                        : Reason.of(PlanReason.KEEP, range.said(), piece),
                                whileIn)
                        .asSentence();
        };
    }

    @Override
    public Tracker tracker(OptionalDouble soakHours) {
        return new HoldTracker(this);
    }

    @Override
    public Optional<Finding> inSummary(DriveSummary summary) {
        if (isStandstill() && range.min() <= 0) {
            return Optional.of(atLeast(summary, DriveQuantity.LONGEST_IDLE));
        }
        boolean fast = range.signal() == Signal.VEHICLE_SPEED && range.min() >= FAST;
        return fast ? Optional.of(atLeast(summary, DriveQuantity.FAST_TIME)) : Optional.empty();
    }

    private Finding atLeast(DriveSummary summary, DriveQuantity quantity) {
        OptionalDouble found = summary.value(quantity);
        if (found.isEmpty()) {
            return Finding.unknown(Reason.of(ConditionReason.QUANTITY_NOT_RECORDED, quantity));
        }
        double needed = atLeast.toMillis() / 1000.0;
        Quantity is = Quantity.of(found.getAsDouble(), Unit.SECOND).beside(needed);
        Quantity wanted = Quantity.of(needed, Unit.SECOND);
        if (found.getAsDouble() * 1000 >= atLeast.toMillis()) {
            return Finding.yes(Reason.of(ConditionReason.TIME_OF, quantity, is, wanted));
        }
        boolean open = summary.atMost(quantity).orElse(0) * 1000 >= atLeast.toMillis();
        return open
                ? Finding.unknown(Reason.of(ConditionReason.TIME_OF_AT_LEAST, quantity, is, wanted))
                : Finding.no(Reason.of(ConditionReason.TIME_OF, quantity, is, wanted));
    }
}
