package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Unsigned bytes as lists of int, and how they are shown to a person. */
final class Bytes {

    private static final String[] HEX = IntStream.range(0, 256)
            .mapToObj(value -> (value < 16 ? "0" : "") + digits(value))
            .toArray(String[]::new);

    private Bytes() {}

    /** "1A F8". */
    static String hex(List<Integer> bytes) {
        StringBuilder text = new StringBuilder(3 * bytes.size());
        for (int value : bytes) {
            text.append(text.isEmpty() ? "" : " ").append(hex(value));
        }
        return text.toString();
    }

    /** "F8"; more than two digits where the value needs them. */
    static String hex(int value) {
        return value >= 0 && value < HEX.length ? HEX[value] : digits(value);
    }

    private static String digits(int value) {
        return Integer.toHexString(value).toUpperCase(Locale.ROOT);
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
                    name + " " + value,
                    name.length() + 1,
                    Part.count(value),
                    Reason.of(ObdExpected.LIMITS, Part.verbatim(name), Part.count(lowest), Part.count(highest)));
        }
    }

    /** What control units and adapters fill unused bytes with: 00, 55, AA or FF, all of them the same. Common practice. */
    static boolean isPadding(List<Integer> bytes) {
        return bytes.stream().distinct().count() <= 1
                && bytes.stream().allMatch(b -> b == 0x00 || b == 0x55 || b == 0xAA || b == 0xFF);
    }
}
