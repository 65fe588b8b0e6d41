package dev.stayfixed.obd;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** How a record disagrees with itself. */
enum Contradiction implements Kind {
    MIL_WITHOUT_CODE,
    COUNT_AGAINST_LIST("counted", "listed"),
    MIL_ON_AND_OFF,
    FAILED_NOT_COMPLETED("code", "status"),
    OF_UNIT("found", "unit");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    Contradiction(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
