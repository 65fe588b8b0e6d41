package dev.stayfixed.archive;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What could not be used of a drive. */
enum DriveDoubt implements Kind {
    LOG_NOT_JUDGED("why"),
    LOG_AGAINST_SUMMARY("mistake"),
    SCAN_AGAINST_LOG("mistake"),
    SCAN_AGAINST_SUMMARY("mistake"),
    SCAN_NOT_READ("scan", "first"),
    EMPTY_SCAN,
    FILED_BY_SCAN("at");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    DriveDoubt(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
