package dev.stayfixed.drive.running;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.time.Duration;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A cold start has to reach a coolant temperature within a time at a held engine speed: the check of a thermostat or a coolant sensor.
 *
 * @param target °C
 * @param within from the engine start
 * @param engineSpeed rpm, after the first half minute
 * @param coldest coolant at the start
 * @param ambient at the start; empty where it does not matter
 */
public record WarmUp(
        double target, Duration within, SignalRange engineSpeed, SignalRange coldest, Optional<SignalRange> ambient)
        implements RunningCheck {

    /** ms to bring the engine to its speed. */
    private static final long LEAD_IN = 30_000;

    /** The part of the time in which the speed may lie outside, or nothing be recorded. Common practice, no source. */
    private static final double MAY_MISS = 0.1;

    /** K by which two starts may differ. Common practice, no source. */
    private static final double ALIKE = 10;

    private static final double RUNNING = 400;
    private static final double ROUNDING = 1e-9;

    public WarmUp {
        if (!Double.isFinite(target) || coldest.max() >= target) {
            throw new IllegalArgumentException("target: found %s °C and a start up to %s °C, expected a colder start"
                    .formatted(target, coldest.max()));
        }
        if (within.isNegative() || within.isZero()) {
            throw new IllegalArgumentException("minutes: found " + within + ", expected more than 0");
        }
    }

    @Override
    public SignalRange range() {
        return SignalRange.atLeast(Signal.COOLANT, target);
    }

    @Override
    public Set<Signal> needed() {
        EnumSet<Signal> needed = EnumSet.of(Signal.COOLANT, Signal.ENGINE_SPEED);
        ambient.ifPresent(range -> needed.add(range.signal()));
        return needed;
    }

    @Override
    public boolean suits(SignalFacts facts) {
        return RunningCheck.super.suits(facts)
                && facts.extent(Signal.COOLANT)
                        .filter(coolant -> coldest.contains(coolant.first()))
                        .isPresent();
    }

    @Override
    public Reason name() {
        return Reason.of(RunReason.WARM_UP);
    }

    @Override
    public Reason said() {
        Reason wanted = Reason.of(
                RunReason.WARM_UP_WANTED, Signal.COOLANT, goal(), allowed(), engineSpeed.said(), coldest.limits());
        return ambient.map(range -> Reason.of(RunReason.WITH_AMBIENT, wanted, range.said()))
                .orElse(wanted);
    }

    @Override
    public <T> T match(Cases<T> cases) {
        return cases.warmUp(this);
    }

    private Quantity goal() {
        return Quantity.of(target, Unit.CELSIUS);
    }

    private Part allowed() {
        return time(within.toMillis());
    }

    private static Part time(long millis) {
        return Part.Time.length(millis);
    }

    @Override
    public Finding judge(Run run) {
        return unsuited(run)
                .map(Finding::unknown)
                .orElseGet(() -> run.reachedAt().isPresent()
                        ? reached(run.reachedAt().getAsLong(), run.unrecorded())
                        : notReached(run));
    }

    /** Why the run does not tell, whatever the coolant did. */
    private Optional<Reason> unsuited(Run run) {
        Optional<Reason> lacking =
                run.lacking().stream().sorted().findFirst().map(signal -> Reason.of(RunReason.LACKING, signal));
        return lacking.or(() -> Stream.concat(Stream.of(coldest), ambient.stream())
                        .flatMap(range -> notAtStart(range, run).stream())
                        .findFirst())
                .or(() -> notHeld(run));
    }

    private static Optional<Reason> notAtStart(SignalRange range, Run run) {
        Double found = run.first().get(range.signal());
        if (found == null) {
            return Optional.of(Reason.of(RunReason.LACKING, range.signal()));
        }
        return range.contains(found)
                ? Optional.empty()
                : Optional.of(Reason.of(
                        RunReason.NOT_AT_START,
                        range.signal(),
                        Quantity.of(found, range.signal().measure()),
                        range.limits()));
    }

    private Optional<Reason> notHeld(Run run) {
        double most = run.looked() * MAY_MISS;
        if (run.outside() > most) {
            return Optional.of(
                    Reason.of(RunReason.NOT_HELD, engineSpeed.said(), time(run.outside()), time(run.looked())));
        }
        return run.unrecorded() > most
                ? Optional.of(Reason.of(RunReason.GAPS, time(run.unrecorded()), time(run.looked())))
                : Optional.empty();
    }

    private Finding reached(long at, long unrecorded) {
        if (at <= within.toMillis()) {
            return Finding.yes(Reason.of(RunReason.CAME_IN_TIME, goal(), time(at), allowed()));
        }
        return at - unrecorded <= within.toMillis()
                ? Finding.unknown(Reason.of(RunReason.CAME_IN_GAP, goal(), time(at), time(unrecorded), allowed()))
                : Finding.no(Reason.of(RunReason.CAME_LATE, goal(), time(at), allowed()));
    }

    private Finding notReached(Run run) {
        Quantity highest = Quantity.of(
                        run.values()
                                .map(Run.Values::highest)
                                .orElseGet(() -> run.first().get(Signal.COOLANT)),
                        Unit.CELSIUS)
                .beside(target);
        return run.looked() < within.toMillis()
                ? Finding.unknown(Reason.of(RunReason.TOO_SHORT, highest, time(run.looked()), allowed()))
                : Finding.no(Reason.of(RunReason.CAME_SHORT, goal(), highest, time(run.looked()), allowed()));
    }

    @Override
    public Optional<Reason> unlike(Run before, Run after) {
        return Stream.of(Signal.COOLANT, Signal.AMBIENT)
                .flatMap(signal -> unlike(signal, before, after).stream())
                .findFirst();
    }

    private static Optional<Reason> unlike(Signal signal, Run before, Run after) {
        Double one = before.first().get(signal);
        Double other = after.first().get(signal);
        return one == null || other == null || Math.abs(one - other) <= ALIKE
                ? Optional.empty()
                : Optional.of(Reason.of(
                        RunReason.NOT_ALIKE,
                        signal,
                        Quantity.of(Math.abs(one - other), Unit.KELVIN).beside(ALIKE),
                        Quantity.of(ALIKE, Unit.KELVIN)));
    }

    @Override
    public RunMeter meter() {
        return new Meter();
    }

    /** From the engine start until the target is reached. */
    private final class Meter extends RunMeter {

        private final Curve curve = new Curve();
        private final Map<Signal, Double> first = new EnumMap<>(Signal.class);
        private OptionalLong start = OptionalLong.empty();
        private OptionalLong reached = OptionalLong.empty();
        private boolean runTimeKnown;
        private long outside;
        private long unrecorded;
        private long now;

        Meter() {
            super(WarmUp.this);
        }

        private boolean isUnderWay() {
            return start.isPresent() && reached.isEmpty();
        }

        @Override
        void count(Timeline.Step step, Timeline held) {
            if (isUnderWay()) {
                weigh(held.valueOrNaN(Signal.COOLANT), step.length());
                boolean isLate = step.from() >= start.getAsLong() + LEAD_IN;
                outside += isLate && !engineSpeed.contains(held.valueOrNaN(Signal.ENGINE_SPEED)) ? step.length() : 0;
            }
        }

        @Override
        void gap(Timeline.Step step) {
            unrecorded += isUnderWay() ? step.length() : 0;
        }

        @Override
        void row(long at, SignalRow row, Timeline held) {
            now = at;
            for (Signal asked : List.of(Signal.COOLANT, Signal.AMBIENT)) {
                row.value(asked).ifPresent(value -> first.putIfAbsent(asked, value));
            }
            if (start.isEmpty() && held.valueOrNaN(Signal.ENGINE_SPEED) >= RUNNING) {
                start = OptionalLong.of(at);
            }
            startedEarlier(at, row);
            double coolant = held.valueOrNaN(Signal.COOLANT);
            if (isDrawn(at)) {
                curve.add(at, row.valueOrNaN(Signal.COOLANT));
            }
            if (isUnderWay() && coolant >= target - ROUNDING) {
                reached = OptionalLong.of(at);
            }
        }

        /** What comes long after the time allowed would only press together what matters. */
        private boolean isDrawn(long at) {
            double share = (double) (at - start.orElse(at)) / within.toMillis();
            return share <= (isUnderWay() ? 2 : 1.3);
        }

        /** A log may begin when the engine has run for a while; where the car tells for how long, that counts. */
        private void startedEarlier(long at, SignalRow row) {
            double seconds = row.valueOrNaN(Signal.RUN_TIME);
            if (start.isPresent() && !runTimeKnown && !Double.isNaN(seconds)) {
                runTimeKnown = true;
                start = OptionalLong.of(Math.min(start.getAsLong(), at - Math.round(seconds * 1_000)));
            }
        }

        @Override
        public Run run() {
            long from = start.orElse(now);
            return new Run(
                    lacking(),
                    first,
                    reached.orElse(now) - from,
                    outside,
                    unrecorded,
                    reached.isPresent() ? OptionalLong.of(reached.getAsLong() - from) : OptionalLong.empty(),
                    values(),
                    curve.from(from));
        }
    }
}
