package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
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
    public Reason said() {
        return Reason.of(ConditionReason.ENGINE_OFF, needed());
    }

    @Override
    public Reason toDo() {
        return Reason.of(PlanReason.LEAVE_OFF, needed());
    }

    private Part needed() {
        return Part.Time.length(atLeast.toMillis());
    }

    @Override
    public <T> T match(Cases<T> cases) {
        return cases.soak(this);
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
            return Finding.unknown(Reason.of(ConditionReason.SOAK_UNKNOWN, needed()));
        }
        long millis = Math.round(hours.getAsDouble() * 3_600_000);
        return millis >= atLeast.toMillis()
                ? Finding.yes(Reason.of(ConditionReason.SOAKED, Part.Time.length(millis), needed()))
                : Finding.no(Reason.of(
                        ConditionReason.SOAKED_SHORT,
                        new Part.TimeOf(millis, atLeast.toMillis()),
                        Part.Time.length(atLeast.toMillis() - millis)));
    }
}
