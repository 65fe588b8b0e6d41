package dev.stayfixed.platform.problem;

import org.jspecify.annotations.Nullable;

/**
 * One thing in a body that cannot be accepted.
 *
 * @param pointer where, as a JSON pointer in URI form, such as "#/faults/0/code"
 * @param found what stands there; null where nothing does
 * @param expected what should stand there, with the accepted choices
 */
public record Mistake(String pointer, @Nullable String found, String expected, String message) {

    private static final int LONGEST_QUOTE = 80;

    public Mistake(String pointer, @Nullable Object found, String expected) {
        this(pointer, quote(found), expected, sentence(pointer, quote(found), expected));
    }

    /** A mistake whose sentence was already made where it was found. */
    public static Mistake said(String pointer, String message) {
        String expected = message.contains("expected ") ? message.substring(message.indexOf("expected ") + 9) : message;
        int found = message.indexOf("found ");
        int comma = message.indexOf(", expected ");
        return new Mistake(
                pointer,
                found >= 0 && comma > found ? quote(message.substring(found + 6, comma)) : null,
                expected,
                message);
    }

    private static String sentence(String pointer, @Nullable String found, String expected) {
        return pointer + ": found " + (found == null ? "nothing" : found) + ", expected " + expected;
    }

    private static @Nullable String quote(@Nullable Object found) {
        if (found == null) {
            return null;
        }
        String text = found.toString();
        String printable = text.codePoints()
                .limit(LONGEST_QUOTE)
                .map(c -> Character.isISOControl(c) || (c >= 0xD800 && c <= 0xDFFF) ? '?' : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        return text.codePointCount(0, text.length()) > LONGEST_QUOTE ? printable + "…" : printable;
    }
}
