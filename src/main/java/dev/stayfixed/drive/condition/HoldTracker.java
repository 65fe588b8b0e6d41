package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
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
            return Finding.yes(heldWords());
        }
        if (!recorded) {
            return Finding.unknown(hold.range().signal().words() + " was not recorded; needed " + hold.words());
        }
        Optional<SignalRange> unknown = blocked.neverRecorded();
        if (unknown.isPresent()) {
            return Finding.unknown(unknown.get().signal().words() + " was not recorded; needed " + hold.words());
        }
        // the rows lie too far apart to tell: it held at the row before a gap, and nobody knows for how long it went on
        if (unrecorded > counted && reached() + unrecorded >= needed) {
            return Finding.unknown("%s held %s%s in recorded time; %s more were not recorded, in gaps of more than 5 s"
                    .formatted(
                            hold.range().words(),
                            Words.timeOf(reached(), needed),
                            hold.manner(),
                            Words.time(unrecorded)));
        }
        return Finding.no(missedWords());
    }

    private String heldWords() {
        return "%s held %s%s; the longest stretch began at %s"
                .formatted(
                        hold.range().words(),
                        Words.timeOf(reached(), needed),
                        hold.manner(),
                        Words.moment(longestFrom));
    }

    private String missedWords() {
        if (inRange == 0 && hold.range().missedBy(closest) > 0) {
            return hold.range().words() + " was never reached; closest was "
                    + hold.range().missedWords(closest);
        }
        String blame = blocked.worst().map(worst -> "; " + worst + " meanwhile").orElse("");
        return total == 0
                ? "%s held 0 s of %s%s%s".formatted(hold.range().words(), Words.time(needed), hold.manner(), blame)
                : heldWords() + blame;
    }
}
