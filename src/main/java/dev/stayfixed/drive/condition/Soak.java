package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** The engine was off for at least so long before the start. */
public record Soak(Duration atLeast) implements Condition {

    public Soak {
        if (atLeast.isNegative() || atLeast.isZero()) {
            throw new IllegalArgumentException("engine-off time: found " + atLeast + ", expected more than 0");
        }
    }

    @Override
    public String words() {
        return "engine off for at least " + Words.time(atLeast) + " before the start";
    }

    @Override
    public String toDo() {
        return "Leave the engine off for at least " + Words.time(atLeast) + " before the start.";
    }

    @Override
    public Phase phase() {
        return Phase.SOAK;
    }

    @Override
    public List<SignalRange> whileIn() {
        return List.of();
    }

    @Override
    public Tracker tracker(OptionalDouble soakHours) {
        Finding finding = judge(soakHours);
        return new Tracker() {
            @Override
            public boolean isMet() {
                return finding.isYes();
            }

            @Override
            public ConditionResult result() {
                return new ConditionResult(Soak.this, finding, OptionalLong.empty(), List.of());
            }
        };
    }

    @Override
    public Optional<Finding> inSummary(DriveSummary summary) {
        return Optional.of(judge(summary.value(DriveQuantity.SOAK)));
    }

    private Finding judge(OptionalDouble hours) {
        if (hours.isEmpty()) {
            return Finding.unknown("it is not known how long the engine was off before; needed " + Words.time(atLeast));
        }
        long millis = Math.round(hours.getAsDouble() * 3_600_000);
        String facts = "engine off for " + Words.timeOf(millis, atLeast.toMillis());
        return millis >= atLeast.toMillis()
                ? Finding.yes(facts)
                : Finding.no(facts + ": " + Words.time(atLeast.toMillis() - millis) + " short");
    }
}
