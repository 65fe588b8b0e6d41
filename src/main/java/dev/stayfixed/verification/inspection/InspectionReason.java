package dev.stayfixed.verification.inspection;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What an inspection would likely say, and because of what. */
enum InspectionReason implements Kind {
    OUTLOOK("likely", "rule", "reasons"),
    MONITORS("count", "groups"),
    MORE_THAN_ALLOWED("monitors", "allowed", "year"),
    MORE_THAN_ANY_ONE("monitors", "year"),
    NOT_ONLY_ALLOWED("groups", "allowed", "year"),
    NONE_ALLOWED("groups", "year"),
    WITHIN_ALLOWED("groups"),
    ALL_COMPLETE,
    MIL_COMMANDED,
    CONFIRMED_CODES("count"),
    PERMANENT_CODES("count"),
    MODEL_YEAR_UNKNOWN,
    READINESS_UNREAD,
    OTHER_MODEL_YEARS("first", "year");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    InspectionReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
