package dev.stayfixed.recording;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The text of one column header, cleaned of what writing and copying did to it.
 *
 * @param text as it is printed
 * @param words lower case without accents, camel case split, single spaces, brackets opened, without a unit in brackets; no name of a signal is
 *     longer than {@link #LONGEST}, so no more is looked at
 * @param unit the unit that the header spells, in brackets or as its last word
 */
record HeaderText(String text, String words, Optional<SourceUnit> unit) {

    static final int LONGEST = 160;

    private static final Pattern CAMEL = Pattern.compile("(?<=[\\p{Ll}0-9])(?=\\p{Lu})");
    private static final Pattern NO_WORD = Pattern.compile("[^\\p{L}\\p{N}/%°]+");
    private static final Pattern ACCENT = Pattern.compile("\\p{M}+");
    private static final Pattern SPACE = Pattern.compile("\\s+");

    static HeaderText of(String raw) {
        String text = clean(raw);
        String looked = text.length() > LONGEST ? text.substring(0, LONGEST) : text;
        List<String> brackets = new ArrayList<>();
        StringBuilder name = new StringBuilder(outsideBrackets(looked, brackets));
        Optional<SourceUnit> unit = Optional.empty();
        for (String bracket : brackets) {
            Optional<SourceUnit> spelled = SourceUnit.spelled(bracket);
            boolean another = unit.isPresent() && !unit.equals(spelled);
            if (spelled.isEmpty() || another) {
                name.append(' ').append(bracket);
            } else {
                unit = spelled;
            }
        }
        String words = words(name.toString());
        return new HeaderText(text, words, unit.isPresent() ? unit : SourceUnit.spelled(lastWord(words)));
    }

    private static String lastWord(String words) {
        return words.substring(words.lastIndexOf(' ') + 1);
    }

    /** One pass; a bracket that is not closed is a letter like any other. */
    private static String outsideBrackets(String text, List<String> inside) {
        StringBuilder outside = new StringBuilder();
        int open = -1;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '(' || c == '[') {
                outside.append(' ').append(open < 0 ? "" : text.substring(open + 1, i));
                open = i;
            } else if ((c == ')' || c == ']') && open >= 0) {
                inside.add(text.substring(open + 1, i).strip());
                open = -1;
            } else if (open < 0) {
                outside.append(c);
            }
        }
        return open < 0 ? outside.toString() : outside + " " + text.substring(open + 1);
    }

    private static String words(String name) {
        String split = CAMEL.matcher(name).replaceAll(" ").toLowerCase(Locale.ROOT);
        return NO_WORD.matcher(plain(split)).replaceAll(" ").strip();
    }

    /** Without accents: "Kühlmittel" is written with and without them. */
    private static String plain(String text) {
        return ACCENT.matcher(Normalizer.normalize(text, Normalizer.Form.NFD))
                .replaceAll("")
                .replace('ł', 'l')
                .replace("ß", "ss");
    }

    /** The same header with the unit that stands elsewhere in the file: below it, or in its cells. */
    static String withUnit(String text, String unit) {
        return text + " [" + unit + "]";
    }

    /** Without byte order mark and outer space; a degree sign that was encoded twice, or in Latin-1, is one again. */
    static String clean(String raw) {
        String text = raw.replace("\uFEFF", "")
                .replace("Â°", "°")
                .replace("Ã‚°", "°")
                .replace("º", "°")
                .replace('\uFFFD', '°');
        return SPACE.matcher(text).replaceAll(" ").strip();
    }
}
