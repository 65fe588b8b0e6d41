package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
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
            return Finding.unknown(missing.words() + " was not recorded; needed " + reach.words());
        }
        return reachedAt.isEmpty() ? Finding.no(notReached()) : reached(reachedAt.getAsLong());
    }

    private String notReached() {
        double target = reach.target(first);
        return "%s was not reached: it came to %s %s, %s short, in %s"
                .formatted(
                        reach.goal(),
                        Words.beside(highest, target),
                        reach.signal().unit(),
                        Words.beside(target - highest, 0) + " " + reach.signal().differenceUnit(),
                        Words.time(now - start.orElse(0)));
    }

    private long took(long at) {
        return Math.max(0, at - start.orElse(0));
    }

    private long limit() {
        return reach.within().map(d -> d.toMillis()).orElse(Long.MAX_VALUE);
    }

    private Finding reached(long at) {
        long took = took(at);
        String facts = reach.goal() + " reached after " + Words.time(took);
        long limit = limit();
        if (took > limit) {
            return Finding.no(reach.goal() + " reached after " + Words.timeOf(took, limit) + ": "
                    + Words.time(took - limit) + " late");
        }
        if (outside > 0) {
            return Finding.no(facts + ", but " + blocked.worst().orElse("the conditions did not hold"));
        }
        if (unrecorded > 0 && !reach.whileIn().isEmpty()) {
            return Finding.unknown(facts + ", but " + Words.time(unrecorded) + " before it were not recorded");
        }
        return Finding.yes(reach.within().isEmpty() ? facts : facts + " of " + Words.time(limit));
    }
}
