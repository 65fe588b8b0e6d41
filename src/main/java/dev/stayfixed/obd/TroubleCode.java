package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import java.util.OptionalInt;

/**
 * A diagnostic trouble code of SAE J2012.
 *
 * @param number the two code bytes, 0x0001 to 0xFFFF; 0x0420 is P0420
 * @param failureType the third byte of SAE J2012-DA and ISO 14229-1, 0x00 to 0xFF, where the record carries one
 */
public record TroubleCode(int number, OptionalInt failureType) {

    private static final String SYSTEMS = "PCBU";
    private static final int LENGTH = 5;
    private static final int LENGTH_WITH_FAILURE_TYPE = 8;

    public TroubleCode {
        if (number < 1 || number > 0xFFFF) {
            throw new ObdFormatException(
                    Bytes.hex(number), 0, Part.verbatim(Bytes.hex(number)), ObdExpected.CODE_NUMBER);
        }
        failureType.ifPresent(type -> Bytes.checkByte("failure type", type));
    }

    /** Accepts "P0420", "p0420", " P0420-1F ". */
    public static TroubleCode parse(String text) {
        int start = 0;
        int end = text.length();
        while (start < end && isBlank(text.charAt(start))) {
            start++;
        }
        while (end > start && isBlank(text.charAt(end - 1))) {
            end--;
        }
        int system = start == end ? -1 : SYSTEMS.indexOf(upper(text.charAt(start)));
        if (system < 0) {
            throw unexpected(text, start, end, ObdExpected.CODE);
        }
        requireDigits(text, start, end);
        int number = system << 14 | digits(text, start + 1, start + LENGTH);
        if (number == 0) {
            throw new ObdFormatException(text, start, Part.verbatim("P0000"), ObdExpected.CODE_NOT_PADDING);
        }
        return end - start == LENGTH
                ? new TroubleCode(number, OptionalInt.empty())
                : new TroubleCode(number, OptionalInt.of(digits(text, start + LENGTH + 1, end)));
    }

    private static void requireDigits(String text, int start, int end) {
        int last = Math.min(end, start + LENGTH_WITH_FAILURE_TYPE);
        for (int at = start + 1; at < last; at++) {
            int place = at - start;
            if (place == 1 && "0123".indexOf(text.charAt(at)) < 0) {
                throw unexpected(text, at, end, ObdExpected.FIRST_DIGIT);
            }
            if (place == LENGTH && text.charAt(at) != '-') {
                throw unexpected(text, at, end, ObdExpected.END_OR_FAILURE_TYPE);
            }
            if (place != LENGTH && hexDigit(text.charAt(at)) < 0) {
                throw unexpected(text, at, end, ObdExpected.HEX_DIGIT);
            }
        }
        int length = end - start;
        if (length < LENGTH) {
            throw unexpected(text, end, end, ObdExpected.FOUR_DIGITS);
        }
        if (length != LENGTH && length != LENGTH_WITH_FAILURE_TYPE) {
            throw unexpected(text, last, end, ObdExpected.CODE_LENGTH);
        }
    }

    private static ObdFormatException unexpected(String text, int at, int end, Part expected) {
        Part found = at < end ? Part.verbatim("'" + text.charAt(at) + "'") : ObdFound.END_OF_TEXT;
        return new ObdFormatException(text, at, found, expected);
    }

    /** SAE J2012 codes without a failure type. */
    public static TroubleCode ofBytes(int high, int low) {
        return new TroubleCode(number(high, low), OptionalInt.empty());
    }

    /** SAE J2012-DA and ISO 14229-1 codes of three bytes. */
    public static TroubleCode ofBytes(int high, int low, int failureType) {
        return new TroubleCode(number(high, low), OptionalInt.of(failureType));
    }

    private static int number(int high, int low) {
        Bytes.checkByte("high byte", high);
        Bytes.checkByte("low byte", low);
        return high << 8 | low;
    }

    /** Same two bytes, and the failure type equal wherever both records carry one. */
    public boolean sameFaultAs(TroubleCode other) {
        return number == other.number
                && (failureType.isEmpty() || other.failureType.isEmpty() || failureType.equals(other.failureType));
    }

    /**
     * The maker defines what the code means: P1xxx and P30xx to P33xx, and likewise C1, C2, B1, B2, U1 and U2. Source: SAE J2012,
     * from memory.
     */
    public boolean isManufacturerSpecific() {
        int digit = number >> 12 & 3;
        if (number >> 14 == 0) {
            return digit == 1 || (digit == 3 && (number >> 8 & 0xF) < 4);
        }
        return digit == 1 || digit == 2;
    }

    /** A P code. */
    public boolean isPowertrain() {
        return number >> 14 == 0;
    }

    /** P07xx to P09xx and P27xx to P29xx: transmission. Source: SAE J2012, from memory. */
    public boolean isOfTransmission() {
        int hundreds = number >> 8 & 0xF;
        return isPowertrain() && (number >> 12 == 0 || number >> 12 == 2) && hundreds >= 7 && hundreds <= 9;
    }

    /** "P0420" or "P0420-1F". */
    public String text() {
        String code = SYSTEMS.charAt(number >> 14) + Bytes.hex(number >> 8 & 0x3F) + Bytes.hex(number & 0xFF);
        return failureType.isPresent() ? code + "-" + Bytes.hex(failureType.getAsInt()) : code;
    }

    private static int digits(String text, int from, int to) {
        int value = 0;
        for (int at = from; at < to; at++) {
            value = value << 4 | hexDigit(text.charAt(at));
        }
        return value;
    }

    /** ASCII only: Character.digit would also take the digits of other scripts. */
    private static int hexDigit(char c) {
        return "0123456789ABCDEF".indexOf(upper(c));
    }

    private static char upper(char c) {
        return c >= 'a' && c <= 'z' ? (char) (c - 'a' + 'A') : c;
    }

    private static boolean isBlank(char c) {
        return Character.isWhitespace(c) || Character.isSpaceChar(c);
    }
}
