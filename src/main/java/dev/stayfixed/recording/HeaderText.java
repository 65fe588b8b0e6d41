package dev.stayfixed.recording;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The text of one column header, cleaned of what writing and copying did to it.
 *
 * @param text as it is printed
 * @param words lower case, camel case split, single spaces, without the unit in brackets
 * @param unit the unit that the header spells, in brackets or as its last word
 */
record HeaderText(String text, String words, Optional<SourceUnit> unit) {

    private static final Pattern BRACKETS = Pattern.compile("[\\[(]([^\\])]*)[\\])]\\s*$");

    static HeaderText of(String raw) {
        String text = clean(raw);
        Matcher brackets = BRACKETS.matcher(text);
        boolean bracketed = brackets.find();
        String name = bracketed ? text.substring(0, brackets.start()) : text;
        String words = name.replaceAll("(?<=[\\p{Ll}0-9])(?=\\p{Lu})", " ")
                .replaceAll("[^\\p{L}\\p{N}/%°]+", " ")
                .strip()
                .toLowerCase(Locale.ROOT);
        Optional<SourceUnit> unit = bracketed ? SourceUnit.spelled(brackets.group(1)) : lastWord(words);
        return new HeaderText(text, words, unit);
    }

    private static Optional<SourceUnit> lastWord(String words) {
        int space = words.lastIndexOf(' ');
        return SourceUnit.spelled(words.substring(space + 1));
    }

    /** Without byte order mark and outer space; a degree sign that was encoded twice, or in Latin-1, is one again. */
    static String clean(String raw) {
        return raw.replace("\uFEFF", "")
                .replace("Â°", "°")
                .replace("Ã‚°", "°")
                .replace("º", "°")
                .replace('\uFFFD', '°')
                .replaceAll("\\s+", " ")
                .strip();
    }
}
