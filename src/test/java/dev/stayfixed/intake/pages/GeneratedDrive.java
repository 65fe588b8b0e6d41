package dev.stayfixed.intake.pages;

import java.time.Instant;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** A drive of 2000 s with 20,000 samples a signal: a cold start, town, a fast stretch, and a pause in the record at 900 s. */
final class GeneratedDrive {

    static final int SAMPLES = 20_000;

    /** One sample among 20,000, at 1234.5 s. */
    static final double SPIKE = 187;

    private GeneratedDrive() {}

    static Recording recording() {
        return new Recording(
                Instant.parse("2026-06-21T08:00:00Z"),
                List.of(
                        signal("speed", "km/h", t -> t == 1234.5 ? SPIKE : Math.max(0, 60 + 50 * Math.sin(t / 97))),
                        signal("engine speed", "rpm", t -> 800 + 900 * (1 + Math.sin(t / 41))),
                        signal("coolant", "°C", t -> 90 - 72 * Math.exp(-t / 260))),
                List.of(
                        new Recording.Condition(
                                "Speed 60 to 100 km/h for 60 s",
                                List.of(new Recording.Span(30, 230), new Recording.Span(620, 840)),
                                List.of(new Recording.Miss(430, "52 s of 60 s"))),
                        new Recording.Condition(
                                "Coolant at least 70 °C", List.of(new Recording.Span(333, 2000)), List.of())));
    }

    private static Recording.Signal signal(String name, String unit, DoubleUnaryOperator value) {
        double[] times = new double[SAMPLES];
        double[] values = new double[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            times[i] = i / 10.0;
            values[i] = times[i] > 900 && times[i] < 960 ? Double.NaN : value.applyAsDouble(times[i]);
        }
        return new Recording.Signal(name, unit, times, values);
    }
}
