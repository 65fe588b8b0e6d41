package dev.stayfixed.drive.running;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/** Takes the rows of one run, in constant memory. */
public abstract class RunMeter implements Consumer<SignalRow> {

    private final Signal signal;
    private final Set<Signal> lacking;
    private final Timeline held = new Timeline();
    private double lowest = Double.POSITIVE_INFINITY;
    private double highest = Double.NEGATIVE_INFINITY;
    private double sum;
    private long weighed;

    RunMeter(RunningCheck check) {
        this.signal = check.range().signal();
        this.lacking = EnumSet.copyOf(check.needed());
    }

    @Override
    public final void accept(SignalRow row) {
        Timeline.Step step = held.moveTo(row.millis());
        if (step.isGap()) {
            gap(step);
        } else {
            count(step, held);
        }
        held.hold(row);
        row.forEach((recorded, value) -> lacking.remove(recorded));
        row(step.to(), row, held);
    }

    /** Time passed in which these values held. */
    abstract void count(Timeline.Step step, Timeline held);

    /** Time passed of which nothing is known. */
    abstract void gap(Timeline.Step step);

    /** A row was reached, ms after the first; its values hold from now on. */
    abstract void row(long at, SignalRow row, Timeline held);

    public abstract Run run();

    /** The signal held this value for so long. */
    final void weigh(double value, long length) {
        if (!Double.isNaN(value)) {
            lowest = Math.min(lowest, value);
            highest = Math.max(highest, value);
            sum += value * length;
            weighed += length;
        }
    }

    final Optional<Run.Values> values() {
        return weighed == 0 ? Optional.empty() : Optional.of(new Run.Values(lowest, highest, sum / weighed));
    }

    final Signal signal() {
        return signal;
    }

    final Set<Signal> lacking() {
        return lacking;
    }
}
