package dev.stayfixed.drive.running;

import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Kind;
import java.util.List;

/** In which a signal is looked at. The limits are common practice, no source. */
public enum EngineState implements Kind {
    /** Warm, standing still. */
    IDLE(
            new SignalRange(Signal.ENGINE_SPEED, 400, 1_500),
            SignalRange.atMost(Signal.VEHICLE_SPEED, 1),
            SignalRange.atLeast(Signal.COOLANT, 70)),
    /** Warm, on the road. */
    CRUISE(
            new SignalRange(Signal.ENGINE_SPEED, 1_000, 4_000),
            SignalRange.atLeast(Signal.VEHICLE_SPEED, 60),
            SignalRange.atLeast(Signal.COOLANT, 70)),
    RUNNING(SignalRange.atLeast(Signal.ENGINE_SPEED, 400));

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<SignalRange> ranges;

    EngineState(SignalRange... ranges) {
        this.ranges = List.of(ranges);
    }

    /** All of them have to hold. */
    public List<SignalRange> ranges() {
        return ranges;
    }
}
