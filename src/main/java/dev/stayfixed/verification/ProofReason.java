package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What will prove a repair, and what stands against it. */
enum ProofReason implements Kind {
    TEST_OF_MESSAGES("code"),
    TEST_OF_CIRCUIT("code"),
    TEST_OF_COMPONENT("code"),
    TEST_OF_GROUP("group"),
    TRIPS_NEEDED("drives", "test", "how"),
    MORE_DRIVES("drives"),
    NEXT_DECIDES("then"),
    FIND_THE_CAUSE,
    END_WITH("reading"),
    READ_CYCLE,
    READ_STATUS,
    READ_STATUS_IF_ANSWERED,
    READ_STATUS_OR("other"),
    READ_RESULT,
    READ_COUNTERS,
    MEET_CONDITIONS("reading"),
    NAME_CONDITIONS("reading"),
    LIST_OF_PENDING,
    LIST_OF_ITS_UNIT,
    LEAVE_STORED,
    MAY_HAVE_FAILED("day"),
    MAY_HAVE_FAILED_BEFORE("day"),
    MAY_NOT_HAVE_RUN("day"),
    SCAN_AT_NEXT_START,
    PENDING_OF_OWNER("code"),
    PENDING_AT_START,
    NO_WAY("code", "why"),
    ONE_WAY("code", "way"),
    TWO_WAYS("code", "best", "cheapest"),
    UNDER_SIMILAR("ways"),
    UNDER_SIMILAR_ONCE_KNOWN("ways"),
    ALL_TOO_WEAK,
    NO_LIST_AND_CLEARED,
    BY_STATUS("drives"),
    BY_RESULT("group", "drives", "list"),
    BY_CYCLE("group", "list", "drives"),
    BY_COUNTER("infotype", "drives", "list"),
    BY_CONDITIONS("drives", "list"),
    BY_CONDITIONS_TO_NAME("drives", "list"),
    BY_MIL_OUT,
    BY_READINESS("group", "list"),
    BY_PERMANENT_GONE,
    BY_PENDING_GONE,
    PENDING_EMPTY,
    CONFIRMED_EMPTY,
    KEY_STILL_ON("list"),
    LIST_WITHOUT_CODE,
    DRIVES_IN_A_ROW("drives");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ProofReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
