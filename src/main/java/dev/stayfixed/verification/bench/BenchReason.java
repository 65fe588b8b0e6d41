package dev.stayfixed.verification.bench;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What measurements at the bench say. */
enum BenchReason implements Kind {
    OF_THE_SUPPLY,
    OF_THE_GROUND,
    OF_THE_PART,
    OF_THE_LEADS,
    OF_SOMETHING_ELSE,
    SUPPLY,
    GROUND,
    OLD_PART,
    NEW_PART,
    LEADS_TOGETHER,
    CHECK_OF_LEADS,
    AFTER_REPAIR("quantity"),
    BAND_OF("what"),
    NUMBER_READ("number", "unit"),
    EXPECTED_BETWEEN("reading", "min", "max", "unit"),
    EXPECTED_LEAST("reading", "min", "unit"),
    EXPECTED_MOST("reading", "max", "unit"),
    READ("what", "reading"),
    READS("what", "reading"),
    OLD_PART_WAS_INSIDE("reading"),
    LEADS_UNCHECKED,
    NOTHING_MEASURED,
    STILL_MISSING("missing"),
    ALL_FIVE("reading"),
    NO_RUN,
    RUNS("check", "before", "after"),
    RUNS_UNLIKE("runs", "why"),
    AFTER_RUN("check", "found"),
    RUN_AFTER("check"),
    RUNS_CHANGED,
    RUNS_RIGHT,
    AND_RUNNING("measured");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    BenchReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
