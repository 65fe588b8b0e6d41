package dev.stayfixed.web.pages;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** How values read on pages. */
public enum PageWord implements Kind {
    JUST_NOW,
    MINUTES_AGO("minutes"),
    HOURS_AGO("hours"),
    DAYS_AGO("days"),
    NOT_KNOWN,
    NOTHING,
    NOT_MEASURED,
    OPEN_CIRCUIT,
    OVER_LIMIT,
    RANGE_OF("least", "most"),
    NO_LESS_THAN("least"),
    LIMIT_ABOVE("most"),
    NOT_STATED,
    YES,
    NO,
    ON,
    OFF,
    ONE_TRIP_FAULT,
    TWO_TRIP_FAULT;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    PageWord(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
