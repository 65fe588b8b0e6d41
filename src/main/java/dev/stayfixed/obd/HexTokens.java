package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.List;

/** Hexadecimal words in a part of a line, separated by blanks or commas, each with or without "0x" or "$" in front. */
final class HexTokens {

    /**
     * One word.
     *
     * @param digits upper case, without "0x"
     * @param at position of its first digit in the line
     */
    record Token(String digits, int at) {
        boolean isWholeBytes() {
            return digits.length() % 2 == 0;
        }
    }

    private HexTokens() {}

    static boolean isSeparator(char c) {
        return c == ' ' || c == '\t' || c == ',' || c == '\u00A0' || c == '\uFEFF' || Character.isWhitespace(c);
    }

    /** At least one word, and nothing but hexadecimal words. */
    static boolean areIn(String line, int from, int to) {
        boolean any = false;
        int at = from;
        while (at < to) {
            if (isSeparator(line.charAt(at))) {
                at++;
                continue;
            }
            int start = skipPrefix(line, at, to);
            int end = wordEnd(line, start, to);
            if (end == start || (end < to && !isSeparator(line.charAt(end)))) {
                return false;
            }
            any = true;
            at = end;
        }
        return any;
    }

    /** The words; call {@link #areIn} first. */
    static List<Token> split(String line, int from, int to) {
        List<Token> tokens = new ArrayList<>();
        int at = from;
        while (at < to) {
            if (isSeparator(line.charAt(at))) {
                at++;
                continue;
            }
            int start = skipPrefix(line, at, to);
            at = wordEnd(line, start, to);
            tokens.add(new Token(upper(line.substring(start, at)), start));
        }
        return tokens;
    }

    private static int skipPrefix(String line, int at, int to) {
        if (line.charAt(at) == '$') {
            return at + 1;
        }
        boolean prefixed = at + 2 < to && line.charAt(at) == '0' && (line.charAt(at + 1) | 0x20) == 'x';
        return prefixed ? at + 2 : at;
    }

    private static int wordEnd(String line, int start, int to) {
        int end = start;
        while (end < to && digit(line.charAt(end)) >= 0) {
            end++;
        }
        return end;
    }

    private static int digit(char c) {
        if (c >= '0' && c <= '9') {
            return c - '0';
        }
        char small = (char) (c | 0x20);
        return small >= 'a' && small <= 'f' && c < 0x80 ? small - 'a' + 10 : -1;
    }

    /** Bytes of two digits with one blank between two of them; empty where anything else stands there. */
    static List<Integer> plainBytes(String line, int from, int to) {
        if (from >= to || (to - from) % 3 != 2) {
            return List.of();
        }
        Integer[] bytes = new Integer[(to - from + 1) / 3];
        for (int i = 0; i < bytes.length; i++) {
            int at = from + 3 * i;
            int high = digit(line.charAt(at));
            int low = digit(line.charAt(at + 1));
            if (high < 0 || low < 0 || (at + 2 < to && line.charAt(at + 2) != ' ')) {
                return List.of();
            }
            bytes[i] = high << 4 | low;
        }
        return List.of(bytes);
    }

    static boolean areDigits(String line, int from, int to) {
        return wordEnd(line, from, to) == to;
    }

    static String upper(String digits) {
        return digits.toUpperCase(java.util.Locale.ROOT);
    }

    static List<Integer> bytes(String line, int from, int to) {
        return bytes(line, split(line, from, to));
    }

    /** Fails where a word has an odd number of digits. */
    static List<Integer> bytes(String line, List<Token> tokens) {
        List<Integer> bytes = new ArrayList<>();
        for (Token token : tokens) {
            if (!token.isWholeBytes()) {
                throw new ObdFormatException(
                        line,
                        token.at(),
                        Reason.of(
                                ObdFound.ODD_DIGITS,
                                Part.verbatim(shorten(token.digits())),
                                Part.count(token.digits().length())),
                        ObdExpected.TWO_DIGITS);
            }
            for (int at = 0; at < token.digits().length(); at += 2) {
                bytes.add(digit(token.digits().charAt(at)) << 4
                        | digit(token.digits().charAt(at + 1)));
            }
        }
        return bytes;
    }

    static Part quoted(String text) {
        return Part.verbatim("'" + shorten(text) + "'");
    }

    static String shorten(String text) {
        return text.length() <= 40 ? text : text.substring(0, 40) + "...";
    }
}
