package dev.stayfixed.telling;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** Why something is told. */
public enum NewsReason implements Kind {
    MOVED("before", "now"),
    MOVED_BECAUSE("before", "now", "why"),
    COUNTED_WITHOUT("said"),
    RECORD_OF_REPAIR_CORRECTED,
    RECORD_OF_DRIVE_CORRECTED,
    DRIVE_LEFT_OUT("said"),
    CLOSED_BECAUSE("said"),
    NOT_DELIVERED("channel", "kind", "why"),
    NO_LONGER_HOLDS("why", "was"),
    NO_DRIVE_FOR("days"),
    TEST_OF_ENDPOINT,
    NEWS("about", "kind", "reason");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    NewsReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
