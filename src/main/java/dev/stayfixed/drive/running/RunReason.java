package dev.stayfixed.drive.running;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a check with the engine running wants, and what a run made of it. */
public enum RunReason implements Kind {
    WARM_UP,
    WARM_UP_WANTED("signal", "target", "time", "speed", "start"),
    WITH_AMBIENT("wanted", "ambient"),
    STEADY("signal", "state"),
    STEADY_WANTED("range", "state", "time"),
    LACKING("signal"),
    NOT_AT_START("signal", "found", "limits"),
    NOT_HELD("range", "time", "looked"),
    GAPS("time", "looked"),
    CAME_IN_TIME("target", "time", "allowed"),
    CAME_LATE("target", "time", "allowed"),
    CAME_IN_GAP("target", "time", "unrecorded", "allowed"),
    CAME_SHORT("target", "highest", "time", "allowed"),
    TOO_SHORT("highest", "time", "allowed"),
    INSIDE("limits", "share", "time", "state", "mean"),
    OUTSIDE("limits", "share", "time", "state", "mean"),
    TOO_LITTLE("time", "state", "needed"),
    NOT_ALIKE("signal", "difference", "most");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    RunReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
