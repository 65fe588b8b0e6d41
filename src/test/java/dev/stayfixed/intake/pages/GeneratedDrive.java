package dev.stayfixed.intake.pages;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
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
                                "P0420",
                                "speed 60 to 105 km/h for 200 s unbroken",
                                Recording.Answer.HELD,
                                "held 206 s",
                                Optional.of(new Recording.Limits("speed", 60, 105)),
                                List.of(stretch(0, 108, false), stretch(199, 304, false), stretch(610, 816, true))),
                        new Recording.Condition(
                                "P0420",
                                "engine speed 2100 to 2700 rpm for 60 s unbroken",
                                Recording.Answer.MISSED,
                                "held 52 s of 60 s",
                                Optional.of(new Recording.Limits("engine speed", 2100, 2700)),
                                List.of(stretch(19, 71, false), stretch(276, 328, false))),
                        new Recording.Condition(
                                "P0420",
                                "coolant of 95 °C",
                                Recording.Answer.MISSED,
                                "90 °C, 5 K short",
                                Optional.of(new Recording.Limits("coolant", 95, Double.POSITIVE_INFINITY)),
                                List.of()),
                        new Recording.Condition(
                                "P0171",
                                "fuel level at least 15 % at the start",
                                Recording.Answer.HELD,
                                "55 %",
                                Optional.empty(),
                                List.of()),
                        new Recording.Condition(
                                "P0171",
                                "calculated load at least 20 % for 10 min in total",
                                Recording.Answer.NOT_KNOWN,
                                "held 400 s, as far as recorded",
                                Optional.empty(),
                                List.of(stretch(1200, 1600, false)))));
    }

    private static Recording.Stretch stretch(double from, double to, boolean counts) {
        return new Recording.Stretch(new Recording.Span(from, to), counts);
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
