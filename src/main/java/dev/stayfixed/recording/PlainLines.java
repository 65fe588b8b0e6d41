package dev.stayfixed.recording;

import java.io.IOException;
import java.io.PushbackReader;
import java.io.Reader;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The lines of a text up to the first quote, cut at each separator: where no quote can hide one, there is no more to CSV. */
final class PlainLines {

    private final Reader reader;
    private final char separator;
    private final LogLimits limits;
    private final int[] ends;
    private char[] buffer = new char[1 << 14];
    private int from;
    private int to;
    private int cells;
    private long line;
    private boolean afterReturn;
    private boolean quoted;

    PlainLines(Reader reader, char separator, LogLimits limits) {
        this.reader = reader;
        this.separator = separator;
        this.limits = limits;
        this.ends = new int[limits.columns()];
    }

    /** A line cannot be cut within the limits. */
    static final class TooLarge extends Exception {}

    /** The next line that is not empty; null at the end of the text, and where a quote stands in the line. */
    @Nullable
    LogRow next() throws IOException, TooLarge {
        while (!quoted) {
            skipLineFeed();
            int end = cut();
            if (end < 0) {
                return null;
            }
            line++;
            LogRow row = end == from ? null : row(end);
            afterReturn = end < to && buffer[end] == '\r';
            from = Math.min(to, end + 1);
            if (row != null) {
                return row;
            }
        }
        return null;
    }

    /** A carriage return and the line feed behind it are one end. */
    private void skipLineFeed() throws IOException {
        if (afterReturn && (from < to || fill()) && buffer[from] == '\n') {
            from++;
        }
        afterReturn = false;
    }

    /** Finds the cells of the line and its end; -1 where there is no line, or a quote in it. */
    private int cut() throws IOException, TooLarge {
        cells = 0;
        int start = from;
        for (int at = from; ; at++) {
            if (at == to) {
                int moved = from;
                boolean more = fill();
                at -= moved;
                start -= moved;
                if (!more) {
                    return at == from ? -1 : endOfLine(start, at);
                }
            }
            char c = buffer[at];
            if (c == separator) {
                endCell(start, at);
                start = at + 1;
            } else if (c == '\n' || c == '\r') {
                return endOfLine(start, at);
            } else if (c == '"') {
                quoted = true;
                return -1;
            }
        }
    }

    private int endOfLine(int start, int end) throws TooLarge {
        endCell(start, end);
        return end;
    }

    private void endCell(int start, int end) throws TooLarge {
        if (cells == limits.columns() || end - start > limits.cellLength()) {
            throw new TooLarge();
        }
        ends[cells++] = end - from;
    }

    private LogRow row(int end) {
        return new LogRow(line, Arrays.copyOfRange(buffer, from, end), Arrays.copyOf(ends, cells), false);
    }

    /** Reads on behind what is there, moved to the front; false at the end of the text. */
    private boolean fill() throws IOException {
        System.arraycopy(buffer, from, buffer, 0, to - from);
        to -= from;
        from = 0;
        if (to == buffer.length) {
            buffer = Arrays.copyOf(buffer, 2 * to);
        }
        int count = reader.read(buffer, to, buffer.length - to);
        to += Math.max(0, count);
        return count > 0;
    }

    /** Lines that are through, empty ones among them. */
    long lines() {
        return line;
    }

    /** From the line with the first quote on; empty where there is none. */
    Reader rest() throws IOException {
        PushbackReader rest = new PushbackReader(reader, Math.max(1, to - from));
        rest.unread(buffer, from, to - from);
        return rest;
    }
}
