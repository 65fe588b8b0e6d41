package dev.stayfixed.intake;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** Where the scans of a drive disagree with themselves. */
enum ScanDoubt implements Kind {
    IN_SCAN("scan", "doubt"),
    COUNT_AGAINST_CODES("counted", "codes"),
    COUNT_OF_UNIT_AGAINST_CODES("counted", "unit", "codes"),
    NO_CODE;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ScanDoubt(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
