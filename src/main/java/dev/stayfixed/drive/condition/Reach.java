package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A signal climbs to a value, or by an amount over its first value, counted from the engine start.
 *
 * @param amount in the signal's unit, inclusive
 * @param isRise the amount is counted over the first value
 * @param within by when; empty for some time in the drive
 * @param leadIn so long after the engine start the ranges of {@code whileIn} need not hold yet
 * @param whileIn have to hold from the engine start (and the lead-in) until the value is reached
 */
public record Reach(
        Signal signal,
        double amount,
        boolean isRise,
        Optional<Duration> within,
        Duration leadIn,
        List<SignalRange> whileIn)
        implements Condition {

    public Reach {
        whileIn = List.copyOf(whileIn);
        if (!Double.isFinite(amount) || (isRise && amount <= 0)) {
            throw new IllegalArgumentException(
                    signal.words() + ": found " + amount + ", expected a number" + (isRise ? " above 0" : ""));
        }
    }

    /** Some time in the drive. */
    public static Reach value(Signal signal, double target) {
        return new Reach(signal, target, false, Optional.empty(), Duration.ZERO, List.of());
    }

    /** Some time in the drive. */
    public static Reach rise(Signal signal, double amount) {
        return new Reach(signal, amount, true, Optional.empty(), Duration.ZERO, List.of());
    }

    /** The same, by a time after the engine start. */
    public Reach within(Duration limit) {
        return new Reach(signal, amount, isRise, Optional.of(limit), leadIn, whileIn);
    }

    double target(double first) {
        return isRise ? first + amount : amount;
    }

    Reason goal() {
        return isRise
                ? Reason.of(
                        ConditionReason.RISE_BY,
                        signal,
                        Quantity.of(amount, signal.measure().ofDifference()))
                : Reason.of(ConditionReason.VALUE_OF, signal, Quantity.of(amount, signal.measure()));
    }

    @Override
    public Reason said() {
        Reason goal = goal();
        return SignalRange.during(
                within.map(limit -> Reason.of(ConditionReason.WITHIN, goal, Part.Time.length(limit.toMillis())))
                        .orElse(goal),
                whileIn);
    }

    @Override
    public Reason toDo() {
        return Reason.of(PlanReason.DRIVE_UNTIL, said());
    }

    @Override
    public <T> T match(Cases<T> cases) {
        return cases.reach(this);
    }

    @Override
    public Phase phase() {
        return Phase.WARM_UP;
    }

    @Override
    public Tracker tracker(OptionalDouble soakHours) {
        return new ReachTracker(this);
    }

    @Override
    public Optional<Finding> inSummary(DriveSummary summary) {
        if (signal != Signal.COOLANT) {
            return Optional.empty();
        }
        OptionalDouble start = summary.value(DriveQuantity.START_COOLANT);
        OptionalDouble peak = summary.value(DriveQuantity.PEAK_COOLANT);
        if (peak.isEmpty() || (isRise && start.isEmpty())) {
            return Optional.of(Finding.unknown(Reason.of(ConditionReason.SIGNAL_NOT_RECORDED, signal)));
        }
        double target = target(start.orElse(0));
        Reason facts = Reason.of(
                ConditionReason.CAME_TO,
                signal,
                Quantity.of(peak.getAsDouble(), signal.measure()),
                Quantity.of(target, signal.measure()));
        return Optional.of(peak.getAsDouble() >= target - 1e-9 ? Finding.yes(facts) : Finding.no(facts));
    }
}
