package dev.stayfixed.learning;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a new job says of an earlier repair. */
enum ComebackReason implements Kind {
    BACK_AFTER("code", "earlier", "days", "repair"),
    RELATED_TO("code", "earlier", "days", "repair");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ComebackReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
