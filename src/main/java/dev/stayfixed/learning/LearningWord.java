package dev.stayfixed.learning;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** How often repairs came back, and the picture of how long they hold. */
public enum LearningWord implements Kind {
    NONE_PROVEN_YET,
    OF_PROVEN("back", "proven"),
    TOO_FEW_TO_COMPARE,
    PERCENT_RANGE("lower", "upper"),
    HOLDING_BY("measure"),
    WATCHED("repairs", "failed"),
    TOO_FEW_TO_CONCLUDE,
    SINCE_REPAIR("measure");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    LearningWord(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
