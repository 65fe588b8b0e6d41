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
    SHOWN_SPAN("from", "to"),
    SHOWN_SIGNAL("signal", "lowest", "highest", "unit"),
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
