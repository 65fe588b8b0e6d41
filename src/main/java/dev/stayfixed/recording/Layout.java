package dev.stayfixed.recording;

import dev.stayfixed.reason.Part;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Where the header stands and what separates the cells.
 *
 * @param headerLine from 1; lines before it say something about the log, not the drive
 */
record Layout(char separator, int headerLine) {

    private static final List<Character> SEPARATORS = List.of(',', ';', '\t', '|');
    private static final int LOOK_AT = 40;

    static Layout of(String head) {
        String[] lines = lines(head, LOOK_AT + 5);
        for (boolean strict : List.of(true, false)) {
            for (int line = 0; line < Math.min(lines.length, LOOK_AT); line++) {
                for (char separator : bySeparators(lines[line])) {
                    if (isHeader(lines, line, separator, strict)) {
                        return new Layout(separator, line + 1);
                    }
                }
            }
        }
        Part first = Arrays.stream(lines)
                .filter(l -> !l.isBlank())
                .findFirst()
                .map(Shown::part)
                .orElse(LogFound.ONLY_BLANK_LINES);
        throw LogFormatException.atLine(1, first, LogExpected.HEADER_LINE);
    }

    /** The first lines; the last one is all that is left. */
    private static String[] lines(String head, int most) {
        List<String> lines = new ArrayList<>();
        int from = 0;
        for (int at = 0; at < head.length() && lines.size() < most - 1; at++) {
            char c = head.charAt(at);
            if (c == '\n' || c == '\r') {
                lines.add(head.substring(from, at));
                boolean both = c == '\r' && at + 1 < head.length() && head.charAt(at + 1) == '\n';
                at += both ? 1 : 0;
                from = at + 1;
            }
        }
        lines.add(head.substring(from));
        return lines.toArray(new String[0]);
    }

    private static List<Character> bySeparators(String line) {
        return SEPARATORS.stream()
                .sorted((a, b) -> Integer.compare(cells(line, b), cells(line, a)))
                .toList();
    }

    /** At least two cells, a letter, and the next lines with as many cells. */
    private static boolean isHeader(String[] lines, int line, char separator, boolean strict) {
        int cells = cells(lines[line], separator);
        boolean named = lines[line].chars().anyMatch(Character::isLetter)
                || PidNames.named(lines[line].split(String.valueOf(separator), 2)[0])
                        .isPresent();
        if (cells < 2 || !named || lines[line].startsWith("#")) {
            return false;
        }
        int[] next = IntStream.range(line + 1, lines.length)
                .filter(i -> !lines[i].isBlank())
                .map(i -> cells(lines[i], separator))
                .limit(3)
                .toArray();
        return strict ? next.length > 0 && next[0] == cells : true;
    }

    private static int cells(String line, char separator) {
        boolean quoted = false;
        int cells = 1;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            quoted ^= c == '"';
            cells += !quoted && c == separator ? 1 : 0;
        }
        return cells;
    }
}
