package dev.stayfixed.obd;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Unsigned bytes as lists of int, and how they are shown to a person. */
final class Bytes {

    private Bytes() {}

    /** "1A F8". */
    static String hex(List<Integer> bytes) {
        return bytes.stream().map(Bytes::hex).collect(Collectors.joining(" "));
    }

    /** "F8"; more than two digits where the value needs them. */
    static String hex(int value) {
        String digits = Integer.toHexString(value).toUpperCase(Locale.ROOT);
        return digits.length() < 2 ? "0" + digits : digits;
    }

    /** The first two bytes of the list, high byte first. */
    static int word(List<Integer> bytes, int from) {
        return bytes.get(from) << 8 | bytes.get(from + 1);
    }

    /** Fails unless {@code value} lies in 0x00 to 0xFF. */
    static void checkByte(String name, int value) {
        checkRange(name, value, 0, 0xFF);
    }

    /** Fails unless {@code value} lies in 0x0000 to 0xFFFF. */
    static void checkWord(String name, int value) {
        checkRange(name, value, 0, 0xFFFF);
    }

    static void checkRange(String name, int value, int lowest, int highest) {
        if (value < lowest || value > highest) {
            throw new ObdFormatException(
                    name + " " + value, name.length() + 1, "" + value, name + " from " + lowest + " to " + highest);
        }
    }

    /** What control units and adapters fill unused bytes with: 00, 55, AA or FF, all of them the same. Common practice. */
    static boolean isPadding(List<Integer> bytes) {
        return bytes.stream().distinct().count() <= 1
                && bytes.stream().allMatch(b -> b == 0x00 || b == 0x55 || b == 0xAA || b == 0xFF);
    }
}
