package dev.stayfixed.jobs.pages;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a standing means and what is next, for whoever asks "is it fixed?". */
enum VerdictReason implements Kind {
    OPEN_FOR_REPAIR("code"),
    NOT_PROVEN("monitor", "trips"),
    ON_THE_WAY("monitor", "passes", "needed"),
    FIXED_BY_ONE("monitor"),
    FIXED("monitor", "trips"),
    FAILED_AGAIN_ONCE,
    DOUBTFUL,
    CAME_BACK,
    NOT_FIXED,
    FIND_CAUSE("code"),
    ONE_DRIVE_DECIDES("monitor", "code"),
    RECORD_REPAIR("code"),
    DRIVES_NEEDED("drives", "monitor"),
    MORE_DRIVES_NEEDED("drives", "monitor"),
    CLOSE_JOB,
    READ_AGAIN;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    VerdictReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
