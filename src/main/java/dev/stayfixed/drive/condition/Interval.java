package dev.stayfixed.drive.condition;

/** A time in which something held: ms since the first row, the start inclusive, the end exclusive. */
public record Interval(long from, long to) {

    public long length() {
        return to - from;
    }
}
