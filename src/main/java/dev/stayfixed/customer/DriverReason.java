package dev.stayfixed.customer;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What is asked of a driver. */
enum DriverReason implements Kind {
    PARKED,
    COOLED_DOWN,
    WARM_UP,
    TANK,
    OUTSIDE,
    NOT_HIGH,
    IDLE_FOR,
    IDLE_WARM_FOR,
    COAST_DOWN,
    COAST_OFTEN,
    SPEED_FOR("where", "limits"),
    SPEED_IN_PIECES("where", "limits"),
    ON_ANY_ROAD,
    ON_OPEN_ROAD,
    ON_MOTORWAY,
    DRIVE_FOR,
    DRIVE_IN_PIECES,
    COLD,
    LOW,
    THREE_TIMES,
    LEAST("min"),
    MOST("max"),
    FROM("min", "max"),
    MINUTES("number"),
    TIME_PARKED,
    ASKED_LEAST("what", "min"),
    ASKED_MOST("what", "max"),
    ASKED_BOTH("what", "min", "max"),
    DONE_OF("done", "needed"),
    PROVEN_BY("needed"),
    SHOWED_AGAIN,
    REPAIR_NOT_RECORDED,
    HELD_NOT_SEEN,
    HELD("drives", "days"),
    HELD_DRIVEN("distance", "drives", "days"),
    HELD_NO_MORE,
    DRIVES_HELD("count"),
    DAYS_HELD("count"),
    LEFT_OUT_BY_WORKSHOP,
    CHECK_SAYS("check", "says"),
    BEFORE_REPAIR_OF("check"),
    DRIVE_COUNTS,
    DRIVE_FAILED,
    DRIVE_BROUGHT_IT_BACK,
    DRIVE_NOT_CHECKED,
    DRIVE_WITHOUT_RESULT,
    DRIVE_BEFORE_OLD_ENTRY_WENT,
    DRIVE_DISAGREES;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    DriverReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
