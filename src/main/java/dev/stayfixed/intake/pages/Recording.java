package dev.stayfixed.intake.pages;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.reason.Kind;
import dev.stayfixed.web.pages.PageWord;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What {@link SignalPlot} draws: signals over the time of one drive, and where enabling conditions held. It knows nothing of where the
 * samples come from.
 *
 * @param start of the drive; all times are in seconds after it
 * @param conditions in the order in which their rows are drawn
 */
record Recording(Instant start, List<Signal> signals, List<Condition> conditions) {

    /** A recorded signal. */
    static final class Signal {

        private final String name;
        private final String unit;
        private final double[] times;
        private final double[] values;

        /**
         * A signal of many samples.
         *
         * @param times s, ascending, as many as values
         * @param values in unit; NaN where there is no reading, which breaks the line
         */
        Signal(String name, String unit, double[] times, double[] values) {
            if (times.length != values.length) {
                throw new IllegalArgumentException("%s: found %d times and %d values, expected as many of both"
                        .formatted(name, times.length, values.length));
            }
            for (int i = 1; i < times.length; i++) {
                if (!(times[i] >= times[i - 1])) {
                    throw new IllegalArgumentException("%s: found the time %s after %s, expected ascending times"
                            .formatted(name, times[i], times[i - 1]));
                }
            }
            this.name = name;
            this.unit = unit;
            this.times = times.clone();
            this.values = values.clone();
        }

        String name() {
            return name;
        }

        String unit() {
            return unit;
        }

        int samples() {
            return times.length;
        }

        double time(int sample) {
            return times[sample];
        }

        /** The median time between samples, s; 0 for fewer than two. */
        double typicalStep() {
            double[] steps = new double[Math.max(0, times.length - 1)];
            for (int i = 0; i < steps.length; i++) {
                steps[i] = times[i + 1] - times[i];
            }
            java.util.Arrays.sort(steps);
            return steps.length == 0 ? 0 : steps[steps.length / 2];
        }

        double value(int sample) {
            return values[sample];
        }
    }

    /** What a drive made of a condition. */
    enum Answer {
        HELD(DriveWord.HELD, "good"),
        MISSED(DriveWord.MISSED, "bad"),
        NOT_KNOWN(PageWord.NOT_KNOWN, "quiet");

        @SuppressWarnings("ImmutableEnumChecker") // kinds are enums
        private final Kind word;

        private final String tone;

        Answer(Kind word, String tone) {
            this.word = word;
            this.tone = tone;
        }

        static Answer of(Finding finding) {
            return switch (finding.held()) {
                case YES -> HELD;
                case NO -> MISSED;
                case UNKNOWN -> NOT_KNOWN;
            };
        }

        public Kind word() {
            return word;
        }

        /** Of the tag that says it. */
        public String tone() {
            return tone;
        }
    }

    /**
     * An enabling condition.
     *
     * @param amount the answer in figures, "held 42 s of 60 s"
     * @param limits of the value, where it has some that are drawn
     * @param stretches in which its values were inside its limits; where it has none, it was decided at the start
     */
    record Condition(
            String code,
            String words,
            Answer answer,
            String amount,
            Optional<Limits> limits,
            List<Stretch> stretches) {}

    /**
     * Limits of a signal that is drawn; an infinite one is none.
     *
     * @param signal its name
     */
    record Limits(String signal, double low, double high) {}

    /** A stretch of time in which a condition held, and whether that was long enough to count. */
    record Stretch(Span span, boolean counts) {}

    /** A stretch of time, s. */
    record Span(double from, double to) {

        double length() {
            return to - from;
        }

        boolean touches(Span other) {
            return to >= other.from && from <= other.to;
        }
    }

    /** A part of the recording: what lies outside of it, or is no number, is brought into it; never shorter than 1 s. */
    Span part(double from, double to) {
        double end = Math.max(1, end());
        double first = Double.isNaN(from) ? 0 : Math.min(Math.max(0, from), end - 1);
        return new Span(first, Double.isNaN(to) ? end : Math.min(Math.max(first + 1, to), end));
    }

    /** s, 0 where nothing is recorded. */
    double end() {
        return signals.stream()
                .filter(s -> s.samples() > 0)
                .mapToDouble(s -> s.time(s.samples() - 1))
                .max()
                .orElse(0);
    }
}
