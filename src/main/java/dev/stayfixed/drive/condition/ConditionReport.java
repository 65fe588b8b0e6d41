package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.List;

/** What a drive made of a set of conditions, one result for each in the order of the set. */
public record ConditionReport(ConditionSet set, List<ConditionResult> results) {

    public ConditionReport {
        results = List.copyOf(results);
    }

    /** The same, where what was stated beside the log tells what the log cannot: what stood before the drive began. */
    public ConditionReport with(DriveSummary stated) {
        return new ConditionReport(
                set, results.stream().map(result -> result.with(stated)).toList());
    }

    /** All met, or what was missed; what cannot be told decides only where nothing was missed. */
    public Finding overall() {
        List<Finding> findings = results.stream().map(ConditionResult::finding).toList();
        List<Finding> missed = findings.stream().filter(Finding::isNo).toList();
        List<Finding> open = findings.stream().filter(f -> !f.isYes()).toList();
        if (!missed.isEmpty()) {
            return Finding.no(reasons(missed));
        }
        return open.isEmpty() ? Finding.yes(reasons(findings)) : Finding.unknown(reasons(open));
    }

    private static Reason reasons(List<Finding> findings) {
        return Shape.EACH.of(findings.stream().map(Finding::reason).toList());
    }

    /** Conditions that are still to be met. */
    public List<Condition> open() {
        return results.stream()
                .filter(result -> !result.finding().isYes())
                .map(ConditionResult::condition)
                .toList();
    }
}
