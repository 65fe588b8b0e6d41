package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.reason.Part;
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

    /** The reason of the finding in as few words as fit beside a mark in a picture: "held 42 s of 60 s", "66 °C, 5 K short". */
    public Part amount() {
        return inShort(finding.reason());
    }

    private static Part inShort(Reason reason) {
        if (!(reason.kind() instanceof ConditionReason kind)) {
            return reason;
        }
        return switch (kind) {
            case MEANWHILE -> reason.part("held") instanceof Reason held ? inShort(held) : reason;
            case HELD_UNBROKEN_OF, HELD_IN_TOTAL_OF, MET_UNBROKEN, MET_IN_TOTAL ->
                Reason.of(ConditionReason.HELD_FOR, reason.part("time"));
            case NEVER_HELD_UNBROKEN, NEVER_HELD_IN_TOTAL ->
                Reason.of(ConditionReason.HELD_NONE, reason.part("none"), reason.part("time"));
            case GAPS_UNBROKEN, GAPS_IN_TOTAL -> Reason.of(ConditionReason.HELD_AS_RECORDED, reason.part("time"));
            case NEVER_REACHED_SHORT ->
                Reason.of(ConditionReason.CLOSEST_SHORT, reason.part("closest"), reason.part("missed"));
            case NEVER_REACHED_OVER ->
                Reason.of(ConditionReason.CLOSEST_OVER, reason.part("closest"), reason.part("missed"));
            case NOT_REACHED, STARTED_SHORT ->
                Reason.of(ConditionReason.AMOUNT_SHORT, reason.part("found"), reason.part("missed"));
            case STARTED_OVER, STOOD_TOO_HIGH ->
                Reason.of(ConditionReason.AMOUNT_OVER, reason.part("found"), reason.part("missed"));
            case STARTED_AT, STOOD_ABOVE -> reason.part("found");
            case REACHED, REACHED_IN_TIME -> Reason.of(ConditionReason.AFTER, reason.part("time"));
            case REACHED_LATE -> Reason.of(ConditionReason.LATE, reason.part("late"));
            case REACHED_BUT -> reason.part("why");
            case MISSING -> reason.part("missing");
            case NOT_LOOKED_FOR -> Reason.of(ConditionReason.WAITS);
            default -> reason;
        };
    }

    /** What a driver would have to do; empty where the condition was met. */
    public Optional<Reason> toDo() {
        return finding.isYes() ? Optional.empty() : Optional.of(condition.toDo());
    }
}
