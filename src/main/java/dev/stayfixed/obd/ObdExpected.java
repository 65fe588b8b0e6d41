package dev.stayfixed.obd;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What should stand there, with the accepted choices. */
enum ObdExpected implements Kind {
    AT_MOST_LINES("most"),
    NO_MORE_THAN("most"),
    LIMITS("name", "lowest", "highest"),
    LINE_READ_AGAIN,
    ANSWER_OR_CODES,
    CODE_AND_LIST,
    CODE,
    CODE_NOT_PADDING,
    CODE_NUMBER,
    FIRST_DIGIT,
    END_OR_FAILURE_TYPE,
    HEX_DIGIT,
    FOUR_DIGITS,
    CODE_LENGTH,
    VIN_CHARACTER,
    VIN_LENGTH,
    TWO_DIGITS,
    LENGTH_OR_BYTES,
    HEADER_OR_LENGTH,
    BYTES_BEHIND,
    CAN_FRAME_SIZE,
    ANSWER_OR_REQUEST,
    CHECKSUMS("sum", "crc"),
    CONTROL_BYTES,
    SINGLE_FRAME_LENGTH,
    BYTES_BEHIND_LENGTH("length"),
    FIRST_FRAME_LENGTH,
    FIRST_LINE,
    LINES_BELOW,
    REST("missing"),
    SERVICE,
    REFUSAL,
    CODES_OR_COUNT,
    TWO_BYTES_A_CODE,
    PARAMETER_AND_DATA,
    KNOWN_IDENTIFIER,
    KNOWN_LENGTH,
    DATA_BYTES("count", "pid"),
    FUEL_STATUS_BYTES,
    ONE_BIT,
    NINE_BYTES_A_TEST,
    SUB_FUNCTION,
    KNOWN_SUB_FUNCTION,
    COUNT_OF_CODES,
    AVAILABILITY,
    CODE_FORMAT,
    INFOTYPE_AND_DATA,
    INFOTYPE_BYTES,
    COUNTERS("most");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ObdExpected(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
