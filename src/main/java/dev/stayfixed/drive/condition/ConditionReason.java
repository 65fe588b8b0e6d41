package dev.stayfixed.drive.condition;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a condition is, and what a drive made of it. */
public enum ConditionReason implements Kind {
    RANGE("signal", "limits"),
    BETWEEN("min", "max"),
    NO_LESS("min"),
    NO_MORE("max"),
    WITH("what", "ranges"),
    AT_START("range"),
    ABOVE_AT_START("upper", "most", "lower"),
    ENGINE_OFF("time"),
    RISE_BY("signal", "amount"),
    VALUE_OF("signal", "amount"),
    WITHIN("goal", "time"),
    HELD_UNBROKEN("range", "time"),
    HELD_IN_TOTAL("range", "time"),
    SIGNAL_NOT_RECORDED("signal"),
    SIGNAL_LATE("signal", "time"),
    MISSING("missing", "needed"),
    STARTED_AT("signal", "found", "limits"),
    STARTED_SHORT("signal", "found", "missed", "limits"),
    STARTED_OVER("signal", "found", "missed", "limits"),
    STOOD_ABOVE("upper", "found", "lower", "most"),
    STOOD_TOO_HIGH("upper", "found", "lower", "most", "missed"),
    TEMPERATURES_UNKNOWN,
    LOWEST_AMBIENT_ONLY("found"),
    SOAK_UNKNOWN("time"),
    SOAKED("time", "needed"),
    SOAKED_SHORT("time", "missed"),
    QUANTITY_NOT_RECORDED("quantity"),
    CAME_TO("signal", "found", "needed"),
    TIME_OF("quantity", "found", "needed"),
    TIME_OF_AT_LEAST("quantity", "found", "needed"),
    NOT_REACHED("goal", "found", "missed", "time"),
    REACHED("goal", "time"),
    REACHED_IN_TIME("goal", "time", "limit"),
    REACHED_LATE("goal", "time", "limit", "late"),
    REACHED_BUT("reached", "why"),
    NOT_ALL_HELD,
    UNRECORDED_BEFORE("time"),
    DID_NOT_HOLD("time", "range"),
    MEANWHILE("held", "blocked"),
    HELD_UNBROKEN_OF("range", "time", "from"),
    HELD_IN_TOTAL_OF("range", "time", "from"),
    MET_UNBROKEN("range", "time", "needed", "from"),
    MET_IN_TOTAL("range", "time", "needed", "from"),
    NEVER_REACHED_SHORT("range", "closest", "missed"),
    NEVER_REACHED_OVER("range", "closest", "missed"),
    NEVER_HELD_UNBROKEN("range", "none", "time"),
    NEVER_HELD_IN_TOTAL("range", "none", "time"),
    GAPS_UNBROKEN("range", "time", "unrecorded"),
    GAPS_IN_TOTAL("range", "time", "unrecorded"),
    NOT_LOOKED_FOR("condition"),
    NOTHING_AGAINST,
    HELD_FOR("time"),
    HELD_NONE("none", "time"),
    HELD_AS_RECORDED("time"),
    AMOUNT_SHORT("found", "missed"),
    AMOUNT_OVER("found", "missed"),
    CLOSEST_SHORT("closest", "missed"),
    CLOSEST_OVER("closest", "missed"),
    LATE("late"),
    AFTER("time"),
    WAITS;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ConditionReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
