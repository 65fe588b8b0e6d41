package dev.stayfixed.bench;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** A log of any size that exists only while it is read: ten rows a second of a car that idles, drives and warms up. */
public final class GeneratedLog extends InputStream {

    private final long size;
    private byte[] line =
            "Time (s),01-0C,01-0D,01-05,01-04,01-0F,01-46,01-11,01-2F,note\n".getBytes(StandardCharsets.US_ASCII);
    private int position;
    private long delivered;
    private long row;

    /** @param size bytes, reached by whole rows */
    public GeneratedLog(long size) {
        this.size = size;
    }

    @Override
    public int read() {
        if (position == line.length && !nextLine()) {
            return -1;
        }
        delivered++;
        return line[position++];
    }

    @Override
    public int read(byte[] buffer, int offset, int length) {
        if (position == line.length && !nextLine()) {
            return -1;
        }
        int count = Math.min(length, line.length - position);
        System.arraycopy(line, position, buffer, offset, count);
        position += count;
        delivered += count;
        return count;
    }

    private boolean nextLine() {
        if (delivered >= size) {
            return false;
        }
        long second = row / 10;
        boolean drives = second % 600 > 60;
        line = String.format(
                        Locale.ROOT,
                        "%d.%d,%d,%d,%d,%d,24,19,%d,54.1,row %d%n",
                        second,
                        row % 10,
                        drives ? 1_800 + row % 400 : 800,
                        drives ? 60 + row % 50 : 0,
                        Math.min(90, 18 + second / 8),
                        drives ? 40 : 22,
                        drives ? 20 : 12,
                        row)
                .getBytes(StandardCharsets.US_ASCII);
        position = 0;
        row++;
        return true;
    }

    /** Rows that were made so far. */
    public long rows() {
        return row;
    }
}
