package dev.stayfixed.jobs;

import dev.stayfixed.platform.PlainText;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.function.IntPredicate;

/** What a person types to find something: part of a text, in any case. */
public final class SearchText {

    /** Longer parts are not told apart. */
    private static final int LONGEST = 40;

    private SearchText() {}

    /**
     * A stretch of texts in the order of their bytes: all that begin with what was typed.
     *
     * @param from the first of them
     * @param until the first one after them
     */
    public record Stretch(String from, String until) {}

    /** The stretch of what was typed, which is not blank; an empty one for what no text can contain. */
    public static Stretch stretch(String typed) {
        String text = cut(plain(typed), 0);
        int last = text.codePointBefore(text.length());
        if (PlainText.flaw(text).isPresent() || last == Character.MAX_CODE_POINT) {
            return new Stretch("", "");
        }
        int next = last + 1 == Character.MIN_SURROGATE ? Character.MAX_SURROGATE + 1 : last + 1;
        return new Stretch(
                text, text.substring(0, text.length() - Character.charCount(last)) + Character.toString(next));
    }

    /** Every end of a text, so that any part of it begins one of them. */
    static Set<String> parts(String text) {
        return ends(plain(text), at -> true);
    }

    /** The ends of a text that begin with a word. */
    static Set<String> words(String text) {
        String plain = plain(text);
        return ends(plain, at -> at == 0 || Character.isWhitespace(plain.codePointBefore(at)));
    }

    private static Set<String> ends(String text, IntPredicate begins) {
        Set<String> ends = new HashSet<>();
        for (int at = 0; at < text.length(); at += Character.charCount(text.codePointAt(at))) {
            if (!Character.isWhitespace(text.codePointAt(at)) && begins.test(at)) {
                ends.add(cut(text, at));
            }
        }
        return ends;
    }

    private static String cut(String text, int from) {
        int left = text.codePointCount(from, text.length());
        return text.substring(from, text.offsetByCodePoints(from, Math.min(left, LONGEST)));
    }

    private static String plain(String typed) {
        return typed.strip().toLowerCase(Locale.ROOT);
    }
}
