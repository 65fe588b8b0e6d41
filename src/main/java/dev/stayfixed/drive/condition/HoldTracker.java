package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.Optional;
import java.util.OptionalLong;

/** Adds up the time for which a range held, and keeps its longest stretch. */
final class HoldTracker implements Tracker {

    private final Hold hold;
    private final long needed;
    private final Blocked blocked;
    private final IntervalLog intervals = new IntervalLog();
    private boolean recorded;
    private double closest = Double.NaN;
    private long total;
    private long inRange;
    private long stretch;
    private long stretchFrom;
    private long longest;
    private long longestFrom;
    private long counted;
    private long unrecorded;
    private boolean holds;
    private OptionalLong metAt = OptionalLong.empty();

    HoldTracker(Hold hold) {
        this.hold = hold;
        this.needed = hold.atLeast().toMillis();
        this.blocked = new Blocked(hold.whileIn());
    }

    @Override
    public void row(long at, SignalRow row, Timeline held, boolean active) {
        blocked.look(held);
        holds = active && hold.range().holds(held) && SignalRange.allHold(hold.whileIn(), held);
        double value = row.valueOrNaN(hold.range().signal());
        if (!Double.isNaN(value)) {
            approach(value);
        }
    }

    private void approach(double value) {
        recorded = true;
        if (Double.isNaN(closest) || hold.range().missedBy(value) < hold.range().missedBy(closest)) {
            closest = value;
        }
    }

    @Override
    public void count(Timeline.Step step, Timeline held) {
        counted += step.length();
        boolean ranges = hold.range().holds(held);
        inRange += ranges ? step.length() : 0;
        if (!ranges || !blocked.allHold(held, step.length())) {
            stretch = 0;
            return;
        }
        stretchFrom = stretch == 0 ? step.from() : stretchFrom;
        stretch += step.length();
        total += step.length();
        intervals.add(step.from(), step.to());
        if (stretch > longest) {
            longest = stretch;
            longestFrom = stretchFrom;
        }
        if (metAt.isEmpty() && isMet()) {
            metAt = OptionalLong.of(step.to() - (reached() - needed));
        }
    }

    @Override
    public void gap(Timeline.Step step) {
        unrecorded += holds ? step.length() : 0;
        stretch = 0;
    }

    private long reached() {
        return hold.unbroken() ? longest : total;
    }

    @Override
    public boolean isMet() {
        return reached() >= needed;
    }

    @Override
    public ConditionResult result() {
        return new ConditionResult(hold, finding(), metAt, intervals.intervals());
    }

    private Finding finding() {
        if (isMet()) {
            return Finding.yes(met());
        }
        if (!recorded) {
            return notRecorded(hold.range().signal());
        }
        Optional<SignalRange> unknown = blocked.neverRecorded();
        if (unknown.isPresent()) {
            return notRecorded(unknown.get().signal());
        }
        // the rows lie too far apart to tell: it held at the row before a gap, and nobody knows for how long it went on
        if (unrecorded > counted && reached() + unrecorded >= needed) {
            return Finding.unknown(Reason.of(
                    hold.unbroken() ? ConditionReason.GAPS_UNBROKEN : ConditionReason.GAPS_IN_TOTAL,
                    hold.range().said(),
                    new Part.TimeOf(reached(), needed),
                    Part.Time.length(unrecorded)));
        }
        return Finding.no(missed());
    }

    private Finding notRecorded(Signal signal) {
        return Finding.unknown(Reason.of(
                ConditionReason.MISSING, Reason.of(ConditionReason.SIGNAL_NOT_RECORDED, signal), hold.said()));
    }

    private Reason met() {
        return Reason.of(
                hold.unbroken() ? ConditionReason.MET_UNBROKEN : ConditionReason.MET_IN_TOTAL,
                hold.range().said(),
                Part.Time.length(reached()),
                Part.Time.length(needed),
                Part.Time.moment(longestFrom));
    }

    private Reason held() {
        return Reason.of(
                hold.unbroken() ? ConditionReason.HELD_UNBROKEN_OF : ConditionReason.HELD_IN_TOTAL_OF,
                hold.range().said(),
                new Part.TimeOf(reached(), needed),
                Part.Time.moment(longestFrom));
    }

    private Reason missed() {
        SignalRange range = hold.range();
        if (inRange == 0 && range.missedBy(closest) > 0) {
            return Reason.of(
                    range.isShort(closest) ? ConditionReason.NEVER_REACHED_SHORT : ConditionReason.NEVER_REACHED_OVER,
                    range.said(),
                    range.found(closest),
                    range.missed(closest));
        }
        Reason held = total == 0 ? neverHeld() : held();
        return blocked.worst()
                .map(worst -> Reason.of(ConditionReason.MEANWHILE, held, worst))
                .orElse(held);
    }

    private Reason neverHeld() {
        return Reason.of(
                hold.unbroken() ? ConditionReason.NEVER_HELD_UNBROKEN : ConditionReason.NEVER_HELD_IN_TOTAL,
                hold.range().said(),
                Part.Time.length(0),
                Part.Time.length(needed));
    }
}
