package dev.stayfixed.jobs.pages;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What the lane of a fault shows, for those who do not see it. */
enum LaneReason implements Kind {
    NOTHING_YET("code"),
    IN_ORDER("code", "events"),
    EVENT_ON("mark", "time"),
    EVENTS_BETWEEN("events", "first", "last"),
    SO_MANY("mark", "count");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    LaneReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
