package dev.stayfixed.obd;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a line of a scan was read as, and what is to be known of it. */
enum LineNote implements Kind {
    BLANK_LINE,
    COMMENT_OR_PROMPT,
    HEADING,
    ADAPTER_COMMAND,
    ADAPTER_MESSAGE,
    SENT_BY_TOOL,
    NO_UNIT_ANSWERED,
    ANSWERS_LOST,
    REQUEST("bytes"),
    EMPTY_FRAME,
    FLOW_CONTROL,
    PART_OF_ANSWER("line"),
    FAILED_AT("position", "found", "expected"),
    FAILED_IN_ANSWER("answer", "failure"),
    WITHOUT_PLACE("found", "expected"),
    NO_CONFIRMED_CODES,
    NO_PENDING_CODES,
    NO_PERMANENT_CODES,
    CONFIRMED_CODES_ARE("codes"),
    PENDING_CODES_ARE("codes"),
    PERMANENT_CODES_ARE("codes"),
    OLDER_LAYOUT,
    LIST_CUT_SHORT,
    LIST_LACKS("missing"),
    LIST_TOO_SHORT("announced", "there"),
    LIST_DOUBTFUL("announced", "there"),
    LIST_MAY_END_IN_FILLING,
    LAST_CODE_CUT,
    BYTES_ANNOUNCED("announced", "there"),
    FRAME_MISSING("frame"),
    FRAME_TOO_SHORT("frame", "bytes"),
    OLDER_LINE_MISSING("line"),
    UNITS_MIXED,
    STATUSES("statuses"),
    NO_STATUSES,
    PERMANENT_STATUSES("statuses"),
    NO_PERMANENT_STATUSES,
    NOT_EMISSIONS_GROUP,
    MATCHING_CODES("count"),
    READINESS_OF_CYCLE,
    READINESS_SINCE_CLEAR,
    PARAMETER("name", "value"),
    PARAMETER_BYTES("pid", "bytes"),
    FREEZE_FRAME("frame", "what"),
    SUPPORTED_PARAMETERS,
    SUPPORTED_TESTS,
    OLDER_TEST,
    TESTS("count"),
    BYTES_BEHIND_TESTS("bytes"),
    SUPPORTED_INFOTYPES,
    VEHICLE_NUMBER("vin"),
    IN_USE_COUNTERS("count"),
    INFOTYPE_NOT_USED("infotype"),
    SERVICE_NOT_USED("service"),
    UNIT_CLEARED_CODES,
    SERVICE_REFUSED("service", "reason"),
    MIL_ON,
    MIL_OFF,
    MONITOR_SINCE_CLEAR("group", "state"),
    MONITOR_OF_CYCLE("group", "state"),
    TEST_PASSED("code"),
    TEST_FAILED("code"),
    TEST_NOT_COMPLETED("code"),
    IN_WORDS("said"),
    IN_WORDS_NOT_WHOLE("said"),
    IN_WORDS_DENIED("said", "line"),
    IN_WORDS_UNCLEAR("said"),
    IN_WORDS_WHOLE("said"),
    CHECK_DIGIT("there", "due");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    LineNote(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
