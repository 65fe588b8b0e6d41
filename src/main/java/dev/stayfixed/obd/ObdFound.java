package dev.stayfixed.obd;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What stands where something else was expected, unless it is shown as it is. */
enum ObdFound implements Kind {
    END,
    END_OF_TEXT,
    LINE_NUMBER("line"),
    LONG_LINE("characters"),
    DAMAGE_MARK,
    CODE_WITHOUT_LIST,
    CODE_WITH_LISTS,
    BESIDE_CODE("text"),
    ODD_DIGITS("text", "count"),
    LENGTH_AND_BYTES("length", "bytes"),
    HEADER_ALONE("header"),
    BYTES_BEHIND_HEADER("bytes"),
    BYTES_BEHIND_NUMBER("bytes"),
    SINGLE_BYTE("byte"),
    CONTROL_BYTE("byte"),
    CHECKSUM("byte"),
    FRAME_LENGTH("length"),
    FRAME_WITHOUT_BYTES,
    FIRST_FRAME("length"),
    CONTINUATION("number"),
    ANSWER_LENGTH,
    ANSWER_CUT_SHORT,
    SERVICE_BYTE("byte"),
    COUNT_BEFORE("count", "bytes"),
    BYTE_COUNT("count"),
    CHARACTER_COUNT("count"),
    IDENTIFIER("identifier", "bytes"),
    PARAMETER_ID("pid"),
    END_AFTER("bytes"),
    FUEL_STATUS("bytes"),
    SUB_FUNCTION("sub"),
    J1939_FORMAT;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ObdFound(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
