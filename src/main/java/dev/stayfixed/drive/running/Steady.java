package dev.stayfixed.drive.running;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.time.Duration;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * A signal has to lie in a band while the engine is in a state: fuel trims at idle, the charging voltage. It does where it lies inside for
 * nine tenths of that time (common practice, no source): a moment on the accelerator is no fault.
 *
 * @param atLeast time in the state without which nothing is told
 */
public record Steady(SignalRange range, EngineState state, Duration atLeast) implements RunningCheck {

    private static final double MAY_MISS = 0.1;

    public Steady {
        if (atLeast.isNegative() || atLeast.isZero()) {
            throw new IllegalArgumentException("minutes: found " + atLeast + ", expected more than 0");
        }
    }

    @Override
    public Set<Signal> needed() {
        EnumSet<Signal> needed = EnumSet.of(range.signal());
        state.ranges().forEach(wanted -> needed.add(wanted.signal()));
        return needed;
    }

    @Override
    public Reason name() {
        return Reason.of(RunReason.STEADY, range.signal(), state);
    }

    @Override
    public Reason said() {
        return Reason.of(RunReason.STEADY_WANTED, range.said(), state, time(atLeast.toMillis()));
    }

    @Override
    public <T> T match(Cases<T> cases) {
        return cases.steady(this);
    }

    private static Part time(long millis) {
        return Part.Time.length(millis);
    }

    @Override
    public Finding judge(Run run) {
        Optional<Signal> lacking = run.lacking().stream().sorted().findFirst();
        if (lacking.isPresent()) {
            return Finding.unknown(Reason.of(RunReason.LACKING, lacking.get()));
        }
        Optional<Run.Values> values = run.values();
        if (values.isEmpty() || run.looked() < atLeast.toMillis()) {
            return Finding.unknown(
                    Reason.of(RunReason.TOO_LITTLE, time(run.looked()), state, time(atLeast.toMillis())));
        }
        boolean isInside = run.outside() <= run.looked() * MAY_MISS;
        Reason facts = Reason.of(
                isInside ? RunReason.INSIDE : RunReason.OUTSIDE,
                range.limits(),
                Quantity.of(Math.floor(100.0 * (run.looked() - run.outside()) / run.looked()), Unit.PERCENT),
                time(run.looked()),
                state,
                Quantity.of(values.get().mean(), range.signal().measure()));
        return isInside ? Finding.yes(facts) : Finding.no(facts);
    }

    /** The state is the same, or the run tells nothing. */
    @Override
    public Optional<Reason> unlike(Run before, Run after) {
        return Optional.empty();
    }

    @Override
    public RunMeter meter() {
        return new Meter();
    }

    /** Adds up the time in the state; the curve is drawn over it alone. */
    private final class Meter extends RunMeter {

        private final Curve curve = new Curve();
        private long looked;
        private long outside;

        Meter() {
            super(Steady.this);
        }

        @Override
        void count(Timeline.Step step, Timeline held) {
            double value = held.valueOrNaN(signal());
            if (step.length() > 0 && !Double.isNaN(value) && isInState(held)) {
                curve.add(looked, value);
                weigh(value, step.length());
                looked += step.length();
                outside += range.contains(value) ? 0 : step.length();
            }
        }

        private boolean isInState(Timeline held) {
            return state.ranges().stream().allMatch(wanted -> wanted.contains(held.valueOrNaN(wanted.signal())));
        }

        @Override
        void gap(Timeline.Step step) {
            // nobody knows in which state it was
        }

        @Override
        void row(long at, SignalRow row, Timeline held) {
            // the values of a row count for the time until the next one
        }

        @Override
        public Run run() {
            return new Run(lacking(), Map.of(), looked, outside, 0, OptionalLong.empty(), values(), curve.from(0));
        }
    }
}
