package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.reason.Reason;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What a drive made of one condition.
 *
 * @param finding met, missed or not to be told, with the reason and by how much
 * @param metAt ms since the first row, where it was met at a moment
 * @param held when it held, for a picture
 */
public record ConditionResult(Condition condition, Finding finding, OptionalLong metAt, List<Interval> held) {

    public ConditionResult {
        held = List.copyOf(held);
    }

    ConditionResult with(DriveSummary stated) {
        return finding.held() != Finding.Held.UNKNOWN || !condition.isBeforeDriving()
                ? this
                : condition
                        .inSummary(stated)
                        .map(told -> new ConditionResult(condition, told, metAt, held))
                        .orElse(this);
    }

    /** What a driver would have to do; empty where the condition was met. */
    public Optional<Reason> toDo() {
        return finding.isYes() ? Optional.empty() : Optional.of(condition.toDo());
    }
}
