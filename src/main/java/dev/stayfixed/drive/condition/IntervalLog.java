package dev.stayfixed.drive.condition;

import java.util.ArrayList;
import java.util.List;

/** Joins touching intervals. A picture needs no more than {@link #MOST}: what comes later is left out of it, not out of the count. */
final class IntervalLog {

    static final int MOST = 5_000;

    private final List<Interval> intervals = new ArrayList<>();

    void add(long from, long to) {
        if (to == from) {
            return;
        }
        int last = intervals.size() - 1;
        if (last >= 0 && intervals.get(last).to() == from) {
            intervals.set(last, new Interval(intervals.get(last).from(), to));
        } else if (intervals.size() < MOST) {
            intervals.add(new Interval(from, to));
        }
    }

    List<Interval> intervals() {
        return List.copyOf(intervals);
    }
}
