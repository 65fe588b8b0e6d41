package dev.stayfixed.obd;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads one pasted line. The whole line is kept and only a window of it is looked at, so that every failure names its position in
 * the line as pasted.
 */
final class LineReader {

    private static final Pattern NUMBERED = Pattern.compile("\\s*([0-9A-Fa-f])\\s*:(.*)");
    private static final Pattern LABELLED = Pattern.compile("([^:]*)[:=](.*)");
    private static final Pattern DAMAGED = Pattern.compile(".*<\\s*(DATA|RX) ERROR.*", Pattern.CASE_INSENSITIVE);
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
            return new LineContent.Nothing(line.isBlank() ? "blank line" : "comment or prompt");
        }
        if (CodeWords.isBareCode(line, from, to)) {
            return CodeWords.read(line, from, to);
        }
        if (HexTokens.areIn(line, from, to)) {
            return HexLine.read(line, from, to);
        }
        return readMixed(line, from, to);
    }

    /** A comment ends the data of its line. */
    private static int endOfData(String line) {
        int end = line.length();
        for (String mark : List.of("#", "//", ";")) {
            int at = line.indexOf(mark);
            end = at >= 0 ? Math.min(end, at) : end;
        }
        return end;
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
        if (DAMAGED.matcher(line).region(from, to).matches()) {
            throw new ObdFormatException(
                    line,
                    line.indexOf('<'),
                    "the adapter's mark of a damaged line",
                    "the line read again from the vehicle");
        }
        Matcher searching = SEARCHING.matcher(line).region(from, to);
        if (searching.lookingAt() && searching.end() < to && HexTokens.areIn(line, searching.end(), to)) {
            return HexLine.read(line, searching.end(), to);
        }
        if (CodeWords.isIn(line, from, to)) {
            return CodeWords.read(line, from, to);
        }
        Matcher labelled = LABELLED.matcher(line).region(from, to);
        if (labelled.matches() && HexTokens.areIn(line, labelled.start(2), to)) {
            return readLabelled(line, labelled, from, to);
        }
        return Chatter.read(line, from, to);
    }

    /** "Readiness: 41 01 ..." drops the label; "7E8: 06 41 ..." keeps it, because it is the header. */
    private static LineContent readLabelled(String line, Matcher labelled, int from, int to) {
        String label = labelled.group(1).strip();
        boolean header = (label.length() == 3 || label.length() == 8) && HexTokens.areIn(label, 0, label.length());
        if (!header) {
            return HexLine.read(line, labelled.start(2), to);
        }
        List<HexTokens.Token> tokens = new ArrayList<>(HexTokens.split(line, from, labelled.end(1)));
        tokens.addAll(HexTokens.split(line, labelled.start(2), to));
        return HexLine.read(line, tokens);
    }
}
