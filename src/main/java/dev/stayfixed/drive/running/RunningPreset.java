package dev.stayfixed.drive.running;

import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Kind;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What is usually checked with the engine running. The figures are common practice, no source: service information overrides them. */
public enum RunningPreset implements Kind {
    WARM_UP(new WarmUp(
            71,
            Duration.ofMinutes(15),
            new SignalRange(Signal.ENGINE_SPEED, 500, 4_000),
            SignalRange.atMost(Signal.COOLANT, 40),
            Optional.empty())),
    IDLE_TRIMS(new Steady(new SignalRange(Signal.LONG_TRIM, -10, 10), EngineState.IDLE, Duration.ofSeconds(30))),
    CRUISE_TRIMS(new Steady(new SignalRange(Signal.LONG_TRIM, -10, 10), EngineState.CRUISE, Duration.ofMinutes(1))),
    CHARGING_VOLTAGE(
            new Steady(new SignalRange(Signal.MODULE_VOLTAGE, 13.2, 14.8), EngineState.RUNNING, Duration.ofMinutes(1))),
    /** Nobody but service information knows its band. */
    OWN_SIGNAL(null);

    @SuppressWarnings("ImmutableEnumChecker") // a check is a record that nothing changes
    private final @Nullable RunningCheck typical;

    RunningPreset(@Nullable RunningCheck typical) {
        this.typical = typical;
    }

    public Optional<RunningCheck> typical() {
        return Optional.ofNullable(typical);
    }
}
