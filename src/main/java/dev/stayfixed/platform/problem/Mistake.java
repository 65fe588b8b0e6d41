package dev.stayfixed.platform.problem;

import org.jspecify.annotations.Nullable;

/**
 * One thing in what was sent that cannot be accepted.
 *
 * @param path where, as Bean Validation and Spring write the path of a property, such as "faults[0].code"; "" for the whole
 * @param found what stands there; null where nothing does
 * @param expected what should stand there, with the accepted choices
 * @param said the sentence of whoever found it, and how it begins; null where it is made of what was found and expected
 */
public record Mistake(
        String path,
        @Nullable String found,
        String expected,
        @Nullable Said said) {

    private static final int LONGEST_QUOTE = 80;

    /**
     * A sentence that was already made.
     *
     * @param isOfAPart it begins within the place, such as "at position 3", so the place belongs in front of it
     */
    record Said(String sentence, boolean isOfAPart) {}

    public Mistake(String path, @Nullable Object found, String expected) {
        this(path, quote(found), expected, null);
    }

    /** A mistake whose sentence was already made where it was found. */
    public static Mistake said(String path, String sentence) {
        return said(path, new Said(sentence, false));
    }

    /** A mistake of a parser, whose sentence begins with the position within the place. */
    public static Mistake within(String path, String sentence) {
        return said(path, new Said(sentence, true));
    }

    private static Mistake said(String path, Said said) {
        String sentence = said.sentence();
        String expected =
                sentence.contains("expected ") ? sentence.substring(sentence.indexOf("expected ") + 9) : sentence;
        int found = sentence.indexOf("found ");
        int comma = sentence.indexOf(", expected ");
        return new Mistake(
                path, found >= 0 && comma > found ? quote(sentence.substring(found + 6, comma)) : null, expected, said);
    }

    /** The whole sentence: what was found, where, and what was expected. */
    public String sentence() {
        return sentence(path.isEmpty() ? "the whole" : path);
    }

    /** The whole sentence, where the place is called so. */
    String sentence(String place) {
        if (said != null) {
            return said.isOfAPart() ? place + " " + said.sentence() : said.sentence();
        }
        return place + ": found " + (found == null ? "nothing" : found) + ", expected " + expected;
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
