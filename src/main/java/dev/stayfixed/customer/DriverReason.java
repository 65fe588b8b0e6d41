package dev.stayfixed.customer;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What is asked of a driver. */
enum DriverReason implements Kind {
    PARKED("time"),
    COOLED_DOWN,
    WARM_UP,
    TANK("limits"),
    OUTSIDE("limits"),
    NOT_HIGH,
    IDLE_FOR("time"),
    IDLE_WARM_FOR("time"),
    COAST_DOWN("time"),
    COAST_OFTEN("time"),
    SPEED_FOR("limits", "time"),
    SPEED_IN_PIECES("limits", "time"),
    DRIVE_FOR("time"),
    DRIVE_IN_PIECES("time"),
    LEAST("min"),
    MOST("max"),
    FROM("min", "max"),
    SECONDS("number"),
    MINUTES("number"),
    HOURS("number"),
    TIME_PARKED,
    ASKED_LEAST("what", "min"),
    ASKED_MOST("what", "max"),
    ASKED_BOTH("what", "min", "max"),
    DONE_OF("done", "needed"),
    PROVEN_BY("needed"),
    SHOWED_AGAIN,
    REPAIR_NOT_RECORDED,
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
