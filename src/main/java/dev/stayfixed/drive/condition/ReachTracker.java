package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.util.Optional;
import java.util.OptionalLong;

/** Waits for a value to be reached, and watches what has to hold until then. */
final class ReachTracker implements Tracker {

    private static final double RUNNING = 400;
    private static final long SOON = 5_000;
    private static final double ROUNDING = 1e-9;

    private final Reach reach;
    private final Blocked blocked;
    private final IntervalLog intervals = new IntervalLog();
    private OptionalLong start = OptionalLong.empty();
    private OptionalLong reachedAt = OptionalLong.empty();
    private double first = Double.NaN;
    private double highest = Double.NEGATIVE_INFINITY;
    private long now;
    private long outside;
    private long unrecorded;

    ReachTracker(Reach reach) {
        this.reach = reach;
        this.blocked = new Blocked(reach.whileIn());
    }

    @Override
    public void row(long at, SignalRow row, Timeline held, boolean active) {
        now = at;
        blocked.look(held);
        findStart(at, held);
        double value = held.valueOrNaN(reach.signal());
        if (!Double.isNaN(value)) {
            first = Double.isNaN(first) ? value : first;
            highest = Math.max(highest, value);
        }
        if (active && reachedAt.isEmpty() && isThere(value)) {
            reachedAt = OptionalLong.of(at);
        }
    }

    /** The engine start; the first row where the log does not tell the engine speed. */
    private void findStart(long at, Timeline held) {
        double speed = held.valueOrNaN(Signal.ENGINE_SPEED);
        if (start.isEmpty() && speed >= RUNNING) {
            start = OptionalLong.of(at);
        } else if (start.isEmpty() && Double.isNaN(speed) && at > SOON) {
            start = OptionalLong.of(0);
        }
    }

    private boolean isThere(double value) {
        return value >= reach.target(first) - ROUNDING;
    }

    @Override
    public void count(Timeline.Step step, Timeline held) {
        if (isThere(held.valueOrNaN(reach.signal()))) {
            intervals.add(step.from(), step.to());
        }
        if (isUnderWay(step) && !blocked.allHold(held, step.length())) {
            outside += step.length();
        }
    }

    @Override
    public void gap(Timeline.Step step) {
        if (isUnderWay(step)) {
            unrecorded += step.length();
        }
    }

    private boolean isUnderWay(Timeline.Step step) {
        return reachedAt.isEmpty()
                && start.isPresent()
                && step.from() >= start.getAsLong() + reach.leadIn().toMillis();
    }

    @Override
    public boolean isMet() {
        return reachedAt.isPresent()
                && !Double.isNaN(first)
                && blocked.neverRecorded().isEmpty()
                && took(reachedAt.getAsLong()) <= limit()
                && outside == 0
                && (unrecorded == 0 || reach.whileIn().isEmpty());
    }

    @Override
    public ConditionResult result() {
        return new ConditionResult(reach, finding(), reachedAt, intervals.intervals());
    }

    private Finding finding() {
        Optional<SignalRange> unknown = blocked.neverRecorded();
        if (Double.isNaN(first) || unknown.isPresent()) {
            Signal missing =
                    Double.isNaN(first) ? reach.signal() : unknown.orElseThrow().signal();
            return Finding.unknown(Reason.of(
                    ConditionReason.MISSING, Reason.of(ConditionReason.SIGNAL_NOT_RECORDED, missing), reach.said()));
        }
        return reachedAt.isEmpty() ? Finding.no(notReached()) : reached(reachedAt.getAsLong());
    }

    private Reason notReached() {
        double target = reach.target(first);
        Unit unit = reach.signal().measure();
        return Reason.of(
                ConditionReason.NOT_REACHED,
                reach.goal(),
                Quantity.of(highest, unit).beside(target),
                Quantity.of(target - highest, unit.ofDifference()).beside(0),
                Part.Time.length(now - start.orElse(0)));
    }

    private long took(long at) {
        return Math.max(0, at - start.orElse(0));
    }

    private long limit() {
        return reach.within().map(d -> d.toMillis()).orElse(Long.MAX_VALUE);
    }

    private Finding reached(long at) {
        long took = took(at);
        Reason facts = Reason.of(ConditionReason.REACHED, reach.goal(), Part.Time.length(took));
        long limit = limit();
        if (took > limit) {
            return Finding.no(Reason.of(
                    ConditionReason.REACHED_LATE,
                    reach.goal(),
                    Part.Time.length(took),
                    Part.Time.length(limit),
                    Part.Time.length(took - limit)));
        }
        if (outside > 0) {
            return Finding.no(Reason.of(
                    ConditionReason.REACHED_BUT,
                    facts,
                    blocked.worst().orElseGet(() -> Reason.of(ConditionReason.NOT_ALL_HELD))));
        }
        if (unrecorded > 0 && !reach.whileIn().isEmpty()) {
            return Finding.unknown(Reason.of(
                    ConditionReason.REACHED_BUT,
                    facts,
                    Reason.of(ConditionReason.UNRECORDED_BEFORE, Part.Time.length(unrecorded))));
        }
        return Finding.yes(
                reach.within().isEmpty()
                        ? facts
                        : Reason.of(
                                ConditionReason.REACHED_IN_TIME,
                                reach.goal(),
                                Part.Time.length(took),
                                Part.Time.length(limit)));
    }
}
