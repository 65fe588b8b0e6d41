package dev.stayfixed.obd;

import dev.stayfixed.reason.Reason;
import java.util.List;
import java.util.Optional;

/**
 * One whole answer of one control unit, put together from its lines.
 *
 * @param unit header in hex, "" where the paste shows none
 * @param bytes from the service byte (0x41, 0x43, ...) on
 * @param lengthKnown the bytes are exactly the answer: nothing behind it is padding
 * @param missing what is not there; empty where the answer is whole
 * @param lines one-based numbers of its lines, the first one first
 */
record Message(
        String unit,
        List<Integer> bytes,
        Layout layout,
        boolean lengthKnown,
        Optional<Reason> missing,
        List<Integer> lines) {

    /** CAN and the older protocols lay out some services differently; a line without header does not say which it is. */
    enum Layout {
        CAN,
        OLDER,
        UNKNOWN
    }

    Message {
        bytes = List.copyOf(bytes);
        lines = List.copyOf(lines);
    }

    boolean isWhole() {
        return missing.isEmpty();
    }

    int firstLine() {
        return lines.get(0);
    }

    int service() {
        return bytes.get(0);
    }
}
