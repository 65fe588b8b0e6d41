package dev.stayfixed.obd;

import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads one pasted line. The whole line is kept and only a window of it is looked at, so that every failure names its position in
 * the line as pasted.
 */
final class LineReader {

    private static final Pattern NUMBERED = Pattern.compile("\\s*([0-9A-Fa-f])\\s*:(.*)");
    private static final Pattern DAMAGED = Pattern.compile("<\\s*+(DATA|RX) ERROR", Pattern.CASE_INSENSITIVE);
    private static final Pattern SEARCHING = Pattern.compile("(?i)(SEARCHING|BUS INIT: ?)\\.*(OK)?\\s*");

    private LineReader() {}

    /** Fails with the position in {@code line} where it stops making sense. */
    static LineContent read(String line) {
        int from = 0;
        int to = endOfData(line);
        while (from < to && isSkipped(line.charAt(from))) {
            from++;
        }
        while (to > from && isSkipped(line.charAt(to - 1))) {
            to--;
        }
        if (from == to) {
            return new LineContent.Nothing(
                    Reason.of(line.isBlank() ? LineNote.BLANK_LINE : LineNote.COMMENT_OR_PROMPT));
        }
        if (CodeWords.isBareCode(line, from, to)) {
            return CodeWords.read(line, from, to);
        }
        Optional<LineContent> plain = HexLine.readPlain(line, from, to);
        if (plain.isPresent()) {
            return plain.get();
        }
        if (HexTokens.areIn(line, from, to)) {
            return HexLine.read(line, from, to);
        }
        return readMixed(line, from, to);
    }

    /** A comment ends the data of its line. */
    private static int endOfData(String line) {
        for (int at = 0; at < line.length(); at++) {
            char c = line.charAt(at);
            if (c == '#' || c == ';' || (c == '/' && at + 1 < line.length() && line.charAt(at + 1) == '/')) {
                return at;
            }
        }
        return line.length();
    }

    private static boolean isSkipped(char c) {
        return c == '>' || HexTokens.isSeparator(c);
    }

    private static LineContent readMixed(String line, int from, int to) {
        Matcher numbered = NUMBERED.matcher(line).region(from, to);
        if (numbered.matches() && HexTokens.areIn(line, numbered.start(2), to)) {
            int number = Integer.parseInt(numbered.group(1), 16);
            return new LineContent.Numbered(number, HexTokens.bytes(line, numbered.start(2), to));
        }
        Matcher damaged = DAMAGED.matcher(line).region(from, to);
        if (damaged.find()) {
            ObdFormatException failure =
                    new ObdFormatException(line, damaged.start(), ObdFound.DAMAGE_MARK, ObdExpected.LINE_READ_AGAIN);
            return new LineContent.Damaged(line, failure.reason());
        }
        Optional<LineContent> words = readWords(line, from, to);
        if (words.isPresent()) {
            return words.get();
        }
        Matcher searching = SEARCHING.matcher(line).region(from, to);
        if (searching.lookingAt() && searching.end() < to && HexTokens.areIn(line, searching.end(), to)) {
            return HexLine.read(line, searching.end(), to);
        }
        if (CodeWords.isIn(line, from, to)) {
            return CodeWords.read(line, from, to);
        }
        int label = endOfLabel(line, from, to);
        if (label >= 0 && HexTokens.areIn(line, label + 1, to)) {
            return readLabelled(line, label, from, to);
        }
        return Chatter.read(line, from, to);
    }

    /** A list of codes in words is whole only where no comment hides the rest of the line. */
    private static Optional<LineContent> readWords(String line, int from, int to) {
        return Phrase.of(line, from, to)
                .flatMap(phrase -> WordList.read(phrase)
                        .or(() -> WordLamp.read(phrase))
                        .or(() -> WordMonitor.read(phrase))
                        .or(() -> WordStatus.read(phrase)))
                .map(content -> content instanceof LineContent.Words words && mayGoOn(line, to)
                        ? new LineContent.Words(words.codes(), false)
                        : content);
    }

    private static boolean mayGoOn(String line, int to) {
        return line.indexOf(';', to) >= 0 || CodeWords.isIn(line, to, line.length());
    }

    /** The last equals sign before the first colon, or that colon itself where the line has one; -1 without either. */
    private static int endOfLabel(String line, int from, int to) {
        int colon = line.indexOf(':', from);
        if (colon >= 0 && colon < to) {
            return colon;
        }
        int equals = line.lastIndexOf('=', to - 1);
        return equals >= from ? equals : -1;
    }

    /** "Readiness: 41 01 ..." drops the label; "7E8: 06 41 ..." keeps it, because it is the header. */
    private static LineContent readLabelled(String line, int colon, int from, int to) {
        String label = line.substring(from, colon).strip();
        boolean header = (label.length() == 3 || label.length() == 8) && HexTokens.areIn(label, 0, label.length());
        if (!header) {
            return HexLine.read(line, colon + 1, to);
        }
        List<HexTokens.Token> tokens = new ArrayList<>(HexTokens.split(line, from, colon));
        tokens.addAll(HexTokens.split(line, colon + 1, to));
        return HexLine.read(line, tokens);
    }
}
