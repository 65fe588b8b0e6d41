package dev.stayfixed.intake.pages;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What the page of a drive asks and answers. */
enum DriveWord implements Kind {
    DRIVING_CYCLE,
    WARM_UP_CYCLE,
    MINIMUM_CYCLE,
    GENERAL_DENOMINATOR,
    MIL_SEEN,
    READ_AT_START,
    READ_LATER,
    HELD,
    MISSED,
    NOT_IN_LOG,
    MISSED_AT("time", "why"),
    FOR_FAULT("code", "condition"),
    SECONDS_AXIS,
    HOURS_AXIS,
    SHOWN_SPAN("from", "to"),
    SHOWN_SIGNAL("signal", "lowest", "highest", "unit"),
    SHOWN_CONDITION("condition", "held", "missed"),
    ZOOM_IN,
    ZOOM_OUT,
    EARLIER,
    LATER,
    WHOLE_DRIVE;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    DriveWord(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
