package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * How far a value can go away and come back: at once, and in each second more. No car gains 30 km/h in a second, no coolant 5 K. Common
 * practice, no source.
 */
record Pace(double atOnce, double perSecond) {

    private static final double ROUNDING = 1e-6;

    private static final Map<Signal, Pace> PACES = new EnumMap<>(Map.of(
            Signal.VEHICLE_SPEED, new Pace(10, 30),
            Signal.ENGINE_SPEED, new Pace(2_000, 8_000),
            Signal.COOLANT, new Pace(10, 5),
            Signal.OIL, new Pace(10, 5),
            Signal.INTAKE_AIR, new Pace(15, 10),
            Signal.AMBIENT, new Pace(10, 5)));

    static Optional<Pace> of(Signal signal) {
        return Optional.ofNullable(PACES.get(signal));
    }

    double within(long millis) {
        return atOnce + perSecond * millis / 1000.0 + ROUNDING;
    }
}
