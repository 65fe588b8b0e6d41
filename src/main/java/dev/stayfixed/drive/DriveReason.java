package dev.stayfixed.drive;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a drive was, and by how much it missed a condition for the whole of it. */
enum DriveReason implements Kind {
    RUN_TIME_UNKNOWN,
    RAN_AT_LEAST("time"),
    RAN("time"),
    DID_NOT_RUN,
    COOLANT_UNKNOWN,
    COOLANT_ROSE("rise", "needed", "peak", "reach"),
    ALTITUDE_UNKNOWN("quantity", "highest"),
    ALTITUDE("pressure", "altitude", "highest"),
    NOT_RECORDED("quantity", "limits"),
    FOUND("quantity", "found", "limits"),
    FOUND_AT_LEAST("quantity", "found", "limits", "most"),
    FOUND_SHORT("quantity", "found", "limits", "missed"),
    FOUND_OVER("quantity", "found", "limits", "missed"),
    FROM_TO("min", "max"),
    AT_LEAST("min"),
    AT_MOST("max"),
    LIMITED("quantity", "limits");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    DriveReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
