package dev.stayfixed.drive.signal;

import dev.stayfixed.drive.DriveRules;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;

/** Takes the rows of one drive in the order of the log and keeps its facts; nothing that it keeps grows with the number of rows. */
public final class SignalMeter implements Consumer<SignalRow> {

    private final DriveRules rules;
    private final Timeline timeline = new Timeline();
    private final MotionMeter motion;
    private final SteadyPoints points = new SteadyPoints();
    private final Extents extents = new Extents();
    private final Map<WarmUpRule, Long> warmUps = new EnumMap<>(WarmUpRule.class);
    private RowTimes rows = RowTimes.NONE;
    private OptionalLong engineStart = OptionalLong.empty();
    private OptionalLong minimumCycleAt = OptionalLong.empty();
    private Optional<Boolean> milOn = Optional.empty();

    SignalMeter(DriveRules rules, OptionalDouble pedalReleased) {
        this.rules = rules;
        this.motion = new MotionMeter(rules, pedalReleased);
    }

    @Override
    public void accept(SignalRow row) {
        Timeline.Step step = timeline.moveTo(row.millis());
        rows = rows.with(step);
        if (step.isGap()) {
            motion.gap(step.length(), timeline, row);
        } else {
            count(step, row);
        }
        timeline.hold(row);
        row.forEach(extents::add);
        note(step.to(), row);
    }

    private void count(Timeline.Step step, SignalRow row) {
        double given = row.valueOrNaN(Signal.VEHICLE_SPEED);
        double nextSpeed = Double.isNaN(given) ? timeline.valueOrNaN(Signal.VEHICLE_SPEED) : given;
        motion.count(step.length(), timeline, nextSpeed);
        points.count(step.length(), timeline, rules.runningSpeed());
        if (minimumCycleAt.isEmpty() && motion.times().isMinimumCycle(rules)) {
            minimumCycleAt = OptionalLong.of(step.to());
        }
    }

    private void note(long at, SignalRow row) {
        boolean runs = timeline.valueOrNaN(Signal.ENGINE_SPEED) >= rules.runningSpeed();
        if (runs && engineStart.isEmpty()) {
            engineStart = OptionalLong.of(at);
        }
        double mil = timeline.valueOrNaN(Signal.MIL);
        if (runs && !Double.isNaN(mil)) {
            milOn = Optional.of(milOn.orElse(false) || mil >= 0.5);
        }
        double coolant = row.valueOrNaN(Signal.COOLANT);
        if (!Double.isNaN(coolant) && warmUps.size() < WarmUpRule.values().length) {
            warm(at, coolant);
        }
    }

    private void warm(long at, double coolant) {
        double first = extents.first(Signal.COOLANT);
        for (WarmUpRule rule : WarmUpRule.values()) {
            if (rule.isMetBy(first, coolant)) {
                warmUps.putIfAbsent(rule, at);
            }
        }
    }

    /** What is known so far. */
    public SignalFacts facts() {
        boolean moved = extents.has(Signal.VEHICLE_SPEED);
        return new SignalFacts(
                rows,
                motion.times(),
                motion.unrecorded(),
                motion.longestPossibleIdle(),
                engineStart,
                moved ? OptionalDouble.of(motion.distance()) : OptionalDouble.empty(),
                moved ? OptionalDouble.of(motion.trapezoidDistance()) : OptionalDouble.empty(),
                extents.all(),
                warmUps,
                minimumCycleAt,
                points.points(),
                milOn);
    }
}
