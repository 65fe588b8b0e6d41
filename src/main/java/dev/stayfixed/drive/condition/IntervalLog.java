package dev.stayfixed.drive.condition;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Joins touching intervals. A picture needs no more than {@link #MOST}: what comes later is left out of it, not out of the count. */
final class IntervalLog {

    static final int MOST = 5_000;

    private final List<Interval> closed = new ArrayList<>();
    private long openFrom;
    private long openTo;

    void add(long from, long to) {
        if (to == from) {
            return;
        }
        if (isOpen() && openTo == from) {
            openTo = to;
        } else if (closed.size() + (isOpen() ? 1 : 0) < MOST) {
            closed.addAll(open());
            openFrom = from;
            openTo = to;
        }
    }

    private boolean isOpen() {
        return openTo > openFrom;
    }

    private List<Interval> open() {
        return isOpen() ? List.of(new Interval(openFrom, openTo)) : List.of();
    }

    List<Interval> intervals() {
        return Stream.concat(closed.stream(), open().stream()).toList();
    }
}
