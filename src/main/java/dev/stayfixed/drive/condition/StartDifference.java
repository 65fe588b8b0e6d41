package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * At the start, one temperature stands above another by at most so much: the sign of an engine that has cooled down.
 *
 * @param upper the temperature that may stand above
 * @param most K, inclusive
 */
public record StartDifference(Signal upper, Signal lower, double most) implements Condition {

    private static final double ROUNDING = 1e-9;

    public StartDifference {
        if (upper.measure() != Unit.CELSIUS || lower.measure() != Unit.CELSIUS || upper == lower) {
            throw new IllegalArgumentException("difference at the start: found " + upper.words() + " and "
                    + lower.words() + ", expected two temperatures");
        }
    }

    @Override
    public Reason said() {
        return Reason.of(ConditionReason.ABOVE_AT_START, upper, Quantity.of(most, Unit.KELVIN), lower);
    }

    @Override
    public Reason toDo() {
        return Reason.of(PlanReason.START_COLD, said());
    }

    @Override
    public <T> T match(Cases<T> cases) {
        return cases.startDifference(this);
    }

    @Override
    public Phase phase() {
        return Phase.START;
    }

    @Override
    public List<SignalRange> whileIn() {
        return List.of();
    }

    /** The ambient of a summary is the lowest of the drive: a yes is sure, a no is not. */
    @Override
    public Optional<Finding> inSummary(DriveSummary summary) {
        if (upper != Signal.COOLANT || lower != Signal.AMBIENT) {
            return Optional.empty();
        }
        OptionalDouble coolant = summary.value(DriveQuantity.START_COOLANT);
        OptionalDouble ambient = summary.value(DriveQuantity.AMBIENT);
        if (coolant.isEmpty() || ambient.isEmpty()) {
            return Optional.of(Finding.unknown(Reason.of(ConditionReason.TEMPERATURES_UNKNOWN)));
        }
        Finding finding = judge(coolant.getAsDouble() - ambient.getAsDouble());
        return Optional.of(
                finding.isYes()
                        ? finding
                        : Finding.unknown(Reason.of(ConditionReason.LOWEST_AMBIENT_ONLY, finding.reason())));
    }

    private Finding judge(double difference) {
        Quantity found = Quantity.of(difference, Unit.KELVIN).beside(most);
        Quantity needed = Quantity.of(most, Unit.KELVIN);
        return difference <= most + ROUNDING
                ? Finding.yes(Reason.of(ConditionReason.STOOD_ABOVE, upper, found, lower, needed))
                : Finding.no(Reason.of(
                        ConditionReason.STOOD_TOO_HIGH,
                        upper,
                        found,
                        lower,
                        needed,
                        Quantity.of(difference - most, Unit.KELVIN).beside(0)));
    }

    @Override
    public Tracker tracker(OptionalDouble soakHours) {
        FirstValue high = new FirstValue(upper);
        FirstValue low = new FirstValue(lower);
        return new Tracker() {
            @Override
            public void row(long at, SignalRow row, Timeline held, boolean active) {
                high.row(at, row);
                low.row(at, row);
            }

            @Override
            public boolean isMet() {
                return result().finding().isYes();
            }

            @Override
            public ConditionResult result() {
                Finding finding = high.isKnown() && low.isKnown()
                        ? judge(high.value() - low.value())
                        : Finding.unknown((high.isKnown() ? low : high).missing());
                return new ConditionResult(StartDifference.this, finding, OptionalLong.empty(), List.of());
            }
        };
    }
}
