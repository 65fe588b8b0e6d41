package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.Extent;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * A cold start has to reach a temperature within a time, at a held engine speed and an ambient inside limits: the check of a
 * thermostat or a coolant sensor, made alike before and after the repair.
 *
 * @param coldest coolant at the start, inclusive limits
 * @param target °C
 * @param within from the engine start
 * @param leadIn time after the engine start to bring the engine to its speed
 */
public record WarmUpCheck(
        SignalRange coldest,
        double target,
        Duration within,
        SignalRange engineSpeed,
        Duration leadIn,
        Optional<SignalRange> ambient) {

    /** Two runs are alike if they started within so many K of each other. */
    private static final double ALIKE = 10;

    private static final String NAME = "WARM_UP_CHECK";

    public WarmUpCheck {
        if (coldest.signal() != Signal.COOLANT || engineSpeed.signal() != Signal.ENGINE_SPEED) {
            throw new IllegalArgumentException("warm-up check: found %s and %s, expected coolant and engine speed"
                    .formatted(coldest.signal().words(), engineSpeed.signal().words()));
        }
        if (coldest.max() >= target) {
            throw new IllegalArgumentException(
                    "warm-up check: found a start up to %s °C and a target of %s °C, expected a colder start"
                            .formatted(coldest.max(), target));
        }
    }

    /** One run of the check: what the drive made of {@link #conditions}, and its facts. */
    public record Run(ConditionReport report, SignalFacts facts) {

        private Finding finding() {
            return report.overall();
        }

        private Optional<Double> first(Signal signal) {
            return facts.extent(signal).map(Extent::first);
        }
    }

    public ConditionSet conditions() {
        List<Condition> start = ambient.<List<Condition>>map(
                        range -> List.of(new AtStart(coldest), new AtStart(range), reach()))
                .orElseGet(() -> List.of(new AtStart(coldest), reach()));
        return new ConditionSet(NAME, false, start);
    }

    private Reach reach() {
        return new Reach(Signal.COOLANT, target, false, Optional.of(within), leadIn, List.of(engineSpeed));
    }

    /** Whether the repair mended the warm-up: missed before, met after, and the two runs alike. */
    public Finding compare(Run before, Run after) {
        Reason facts = Reason.of(
                ConditionReason.BEFORE_AND_AFTER,
                before.finding().reason(),
                after.finding().reason());
        for (Signal signal : List.of(Signal.COOLANT, Signal.AMBIENT)) {
            Optional<Double> difference =
                    before.first(signal).flatMap(b -> after.first(signal).map(a -> Math.abs(a - b)));
            if (difference.filter(d -> d > ALIKE).isPresent()) {
                return Finding.unknown(Reason.of(
                        ConditionReason.RUNS_NOT_ALIKE,
                        facts,
                        signal,
                        Quantity.of(difference.get(), Unit.KELVIN),
                        Quantity.of(ALIKE, Unit.KELVIN)));
            }
        }
        if (after.finding().isNo()) {
            return Finding.no(facts);
        }
        return before.finding().isNo() && after.finding().isYes() ? Finding.yes(facts) : Finding.unknown(facts);
    }
}
