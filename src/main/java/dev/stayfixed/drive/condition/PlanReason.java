package dev.stayfixed.drive.condition;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a driver has to do, and how often it happened so far. */
enum PlanReason implements Kind {
    START_ONLY_WITH("range"),
    START_COLD("condition"),
    LEAVE_OFF("time"),
    DRIVE_UNTIL("condition"),
    LET_IDLE("piece"),
    LET_RUN("piece"),
    KEEP("range", "piece"),
    COAST_FOR("piece", "range"),
    WITHOUT_BREAK("time"),
    IN_PIECES("time"),
    STEP("phase", "toDo"),
    STEP_FOR("step", "faults"),
    KEY_OFF_STEP("phase"),
    APART("why"),
    NEEDS_EXCLUDE("one", "range", "two", "other"),
    COLD_AND_HOT("cold", "hot"),
    NO_DRIVE_TELLS,
    WOULD_HAVE_MET("met", "judged"),
    TOO_FEW,
    UP_TO("share"),
    ANYTHING_FROM("low", "high"),
    MORE_UNKNOWN("drives"),
    UNTOLD("conditions"),
    TYPICAL_FIGURES("source");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    PlanReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
