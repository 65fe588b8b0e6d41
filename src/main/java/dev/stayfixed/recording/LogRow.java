package dev.stayfixed.recording;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One row of a log as it stands there. Its text is kept whole and becomes cells where somebody asks for them: most cells are numbers,
 * and those are read where they stand.
 */
final class LogRow {

    private final long line;
    private final char[] text;
    private final int[] ends;
    private final boolean broken;

    /**
     * A row.
     *
     * @param line from 1
     * @param text its cells with one character between two of them
     * @param ends where each cell ends in the text
     * @param broken whether a cell runs over the end of a line
     */
    LogRow(long line, char[] text, int[] ends, boolean broken) {
        this.line = line;
        this.text = text;
        this.ends = ends;
        this.broken = broken;
    }

    /** A row of these cells. */
    static LogRow of(long line, List<String> cells) {
        int[] ends = new int[cells.size()];
        int end = -1;
        for (int i = 0; i < ends.length; i++) {
            end += 1 + cells.get(i).length();
            ends[i] = end;
        }
        char[] text = String.join(",", cells).toCharArray();
        return new LogRow(line, text, ends, isBroken(text, 0, text.length));
    }

    long line() {
        return line;
    }

    /** How many cells there are. */
    int size() {
        return ends.length;
    }

    /** Empty where there is none. */
    String cell(int index) {
        return index >= 0 && index < ends.length ? new String(text, start(index), ends[index] - start(index)) : "";
    }

    private int start(int index) {
        return index == 0 ? 0 : ends[index - 1] + 1;
    }

    List<String> cells() {
        return IntStream.range(0, ends.length).mapToObj(this::cell).toList();
    }

    /** Whether a cell runs over the end of a line. */
    boolean isBroken() {
        return broken;
    }

    static boolean isBroken(char[] text, int from, int to) {
        for (int at = from; at < to; at++) {
            if (text[at] == '\n' || text[at] == '\r') {
                return true;
            }
        }
        return false;
    }

    /** The number in a cell that holds nothing else; NaN where it has to be read with care. */
    double number(int index, DecimalMark mark) {
        return index >= 0 && index < ends.length ? PlainCell.number(text, start(index), ends[index], mark) : Double.NaN;
    }

    /** The time in a cell that holds nothing else, ms; {@link PlainCell#NO_TIME} where it has to be read with care. */
    long millis(int index, TimeFormat format, DecimalMark mark) {
        return index >= 0 && index < ends.length
                ? PlainCell.millis(text, start(index), ends[index], format, mark)
                : PlainCell.NO_TIME;
    }

    /** All cells, separated by commas. */
    String joined() {
        return String.join(",", cells());
    }

    @Override
    public String toString() {
        return "line " + line + ": " + Arrays.toString(cells().toArray());
    }
}
