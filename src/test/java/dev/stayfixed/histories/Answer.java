package dev.stayfixed.histories;

import java.util.Map;
import java.util.Set;

/** What one control unit answered to one request, as structure; {@link ReadingText} writes it down. */
sealed interface Answer {

    /** CAN identifier of the control unit. */
    String unit();

    /** How much of the answer reached the record. */
    enum Extent {
        WHOLE,
        /** The end of the message is missing. */
        CUT,
        /** The adapter put an error mark behind it. */
        ERROR_MARK,
        /** Filled up with 00 where no header tells the length. */
        PADDED
    }

    enum Listing {
        CONFIRMED(0x03),
        PENDING(0x07),
        PERMANENT(0x0A);

        final int service;

        Listing(int service) {
            this.service = service;
        }
    }

    /** A readiness bit of the watched fault's group. */
    enum Bit {
        COMPLETE,
        INCOMPLETE,
        NOT_SUPPORTED
    }

    /** Services $03, $07 and $0A. */
    record Codes(String unit, Listing listing, Set<String> codes, Extent extent) implements Answer {}

    /**
     * $01 PID $01.
     *
     * @param count confirmed codes
     * @param others whether the readiness bits of the other groups are all complete
     */
    record SinceClear(String unit, boolean lamp, int count, Bit bit, boolean others) implements Answer {}

    /** $01 PID $41. */
    record ThisCycle(String unit, Bit bit) implements Answer {}

    /**
     * $19 02 FF or $19 0A.
     *
     * @param bytes status by code; a code without any bit set is left out of $19 02
     */
    record Statuses(String unit, int subfunction, Map<String, Integer> bytes, Extent extent) implements Answer {}

    /** A number of service $01: run time $1F, warm-ups $30, km $31, minutes $4E since the clear, odometer $A6 in 0.1 km, rpm $0C. */
    record Counter(String unit, int pid, int value) implements Answer {}

    /** $09 08: ignition cycles, and the watched monitor's own numerator. */
    record InUse(String unit, int ignitionCycles, int numerator) implements Answer {}

    /** Service $06 of the watched monitor. */
    record TestValue(String unit, int value, int min, int max) implements Answer {
        boolean isNone() {
            return value == 0 && min == 0 && max == 0;
        }

        boolean isInside() {
            return value >= min && value <= max;
        }
    }

    /** $09 02. */
    record Vin(String unit, String number) implements Answer {}

    /** $44, or $54 where {@code service} says so. */
    record Cleared(String unit, int service) implements Answer {}

    /** Nobody answered the request. */
    record NoData(String unit, String request) implements Answer {}
}
