package dev.stayfixed.obd;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A short line of plain words, folded so that it can be looked up: lower case, no accents, punctuation as blanks, one colon or equals
 * sign kept apart. A line with any other sign in it ("?", "<", "%") is no such phrase, because that sign may take back what the words
 * say.
 *
 * @param words all of them, in order
 * @param colon how many words stand before the colon, or -1
 */
record Phrase(List<String> words, int colon) {

    private static final int MOST_CHARACTERS = 160;
    private static final String BLANKS = " \t.,-_|()[]*/!\u00A0\u2013\u2014\u2022\u2026";

    /** The accented letters of German and Spanish, and below them what they are folded to. */
    private static final String ACCENTED = "\u00E1\u00E9\u00ED\u00F3\u00FA\u00F1\u00E4\u00F6\u00FC";

    private static final String PLAIN = "aeiounaou";

    static Optional<Phrase> of(String line, int from, int to) {
        if (to - from > MOST_CHARACTERS) {
            return Optional.empty();
        }
        String text = fold(line.substring(from, to));
        List<String> words = new ArrayList<>();
        int colon = -1;
        int at = 0;
        while (at < text.length()) {
            char c = text.charAt(at);
            int end = at;
            while (end < text.length() && isInWord(text, end)) {
                end++;
            }
            if (end > at) {
                words.addAll(split(text.substring(at, end)));
                at = end;
            } else if (c == ':' || c == '=') {
                if (colon >= 0) {
                    return Optional.empty();
                }
                colon = words.size();
                at++;
            } else if (BLANKS.indexOf(c) >= 0) {
                at++;
            } else {
                return Optional.empty();
            }
        }
        return words.isEmpty() ? Optional.empty() : Optional.of(new Phrase(List.copyOf(words), colon));
    }

    /** "Código" becomes "codigo", "n/a" one word. */
    private static String fold(String text) {
        StringBuilder plain = new StringBuilder();
        text.toLowerCase(Locale.ROOT)
                .chars()
                .filter(c -> c < 0x300 || c > 0x36F)
                .forEach(c -> {
                    int accented = ACCENTED.indexOf(c);
                    plain.append(accented < 0 ? (char) c : PLAIN.charAt(accented));
                });
        return plain.toString().replace("n/a", "na").replace("n.a.", "na").replace("\u00DF", "ss");
    }

    private static boolean isInWord(String text, int at) {
        char c = text.charAt(at);
        boolean joins =
                (c == '-' || c == '\'' || c == '\u2019') && at > 0 && Character.isLetterOrDigit(text.charAt(at - 1));
        return Character.isLetterOrDigit(c) || joins;
    }

    /** "not-ready" is two words, "P0420-00" is one code. */
    private static List<String> split(String word) {
        return CodeWords.isCode(word)
                ? List.of(word)
                : List.of(word.split("-", -1)).stream()
                        .filter(part -> !part.isEmpty())
                        .toList();
    }

    String all() {
        return String.join(" ", words);
    }

    /** The first {@code count} words. */
    String before(int count) {
        return String.join(" ", words.subList(0, count));
    }

    String after(int count) {
        return String.join(" ", words.subList(count, words.size()));
    }

    /** Where the subject may end and what is said of it begin: at the colon, or without one behind any word. */
    List<Integer> cuts() {
        if (colon >= 0) {
            return colon > 0 && colon < words.size() ? List.of(colon) : List.of();
        }
        List<Integer> cuts = new ArrayList<>();
        for (int count = 1; count < words.size(); count++) {
            cuts.add(count);
        }
        return cuts;
    }
}
