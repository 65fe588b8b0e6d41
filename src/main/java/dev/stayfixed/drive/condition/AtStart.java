package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** A signal inside limits when the drive starts. */
public record AtStart(SignalRange range) implements Condition {

    private static final Map<Signal, DriveQuantity> QUANTITIES = Map.of(
            Signal.COOLANT, DriveQuantity.START_COOLANT,
            Signal.AMBIENT, DriveQuantity.AMBIENT,
            Signal.BAROMETER, DriveQuantity.BAROMETER,
            Signal.FUEL_LEVEL, DriveQuantity.FUEL_LEVEL);

    @Override
    public Reason said() {
        return Reason.of(ConditionReason.AT_START, range.said());
    }

    @Override
    public Reason toDo() {
        return Reason.of(PlanReason.START_ONLY_WITH, range.said());
    }

    @Override
    public <T> T match(Cases<T> cases) {
        return cases.atStart(this);
    }

    @Override
    public Phase phase() {
        return Phase.START;
    }

    @Override
    public List<SignalRange> whileIn() {
        return List.of();
    }

    @Override
    public Optional<Finding> inSummary(DriveSummary summary) {
        return Optional.ofNullable(QUANTITIES.get(range.signal()))
                .map(quantity ->
                        judge(summary.value(quantity), Reason.of(ConditionReason.SIGNAL_NOT_RECORDED, range.signal())));
    }

    private Finding judge(OptionalDouble value, Reason missing) {
        if (value.isEmpty()) {
            return Finding.unknown(Reason.of(ConditionReason.MISSING, missing, range.limits()));
        }
        double found = value.getAsDouble();
        if (range.contains(found)) {
            return Finding.yes(Reason.of(
                    ConditionReason.STARTED_AT,
                    range.signal(),
                    Quantity.of(found, range.signal().measure()),
                    range.limits()));
        }
        return Finding.no(Reason.of(
                range.isShort(found) ? ConditionReason.STARTED_SHORT : ConditionReason.STARTED_OVER,
                range.signal(),
                range.found(found),
                range.missed(found),
                range.limits()));
    }

    @Override
    public Tracker tracker(OptionalDouble soakHours) {
        FirstValue first = new FirstValue(range.signal());
        return new Tracker() {
            @Override
            public void row(long at, SignalRow row, Timeline held, boolean active) {
                first.row(at, row);
            }

            @Override
            public boolean isMet() {
                return result().finding().isYes();
            }

            @Override
            public ConditionResult result() {
                OptionalDouble value = first.isKnown() ? OptionalDouble.of(first.value()) : OptionalDouble.empty();
                return new ConditionResult(
                        AtStart.this, judge(value, first.missing()), OptionalLong.empty(), List.of());
            }
        };
    }
}
