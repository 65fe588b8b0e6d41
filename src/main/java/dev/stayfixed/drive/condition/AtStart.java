package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
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
    public String words() {
        return range.words() + " at the start";
    }

    @Override
    public String toDo() {
        return "Start only with " + range.words() + ".";
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
                .map(quantity -> judge(summary.value(quantity), range.signal().words() + " was not recorded"));
    }

    private Finding judge(OptionalDouble value, String missing) {
        if (value.isEmpty()) {
            return Finding.unknown(missing + "; needed " + range.limits());
        }
        double found = value.getAsDouble();
        String needed = "; needed " + range.limits();
        return range.contains(found)
                ? Finding.yes("%s %s %s at the start%s"
                        .formatted(
                                range.signal().words(),
                                Words.number(found),
                                range.signal().unit(),
                                needed))
                : Finding.no(range.signal().words() + " at the start " + range.missedWords(found) + needed);
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
