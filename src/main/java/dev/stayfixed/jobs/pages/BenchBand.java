package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.web.pages.Show;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * A measurement drawn on its expected band: before as a square, after as a dot; what was open or over the meter's range stands at the
 * right end. The words beside it say the same.
 *
 * @param what the technician's words
 * @param outside the last reading lies outside the band
 */
public record BenchBand(
        String what, String before, String after, String expected, String unit, boolean outside, String svg) {

    private static final int WIDTH = 200;
    private static final int HEIGHT = 26;
    private static final int EDGE = 12;
    private static final double MARGIN = 0.15;

    /** Of the latest repair that was meant for the fault, as far as it was measured. */
    static List<BenchBand> of(Job job, UUID faultId, Show show) {
        return job.repairs().stream()
                .filter(repair -> repair.faultIds().contains(faultId))
                .filter(repair -> !repair.details().measurements().isEmpty())
                .reduce((first, second) -> second)
                .map(repair -> repair.details().measurements().stream()
                        .map(m -> of(m, show))
                        .toList())
                .orElse(List.of());
    }

    private static BenchBand of(Measurement m, Show show) {
        return new BenchBand(
                m.quantity(),
                show.reading(m.before()),
                show.reading(m.after()),
                show.range(m.expectedMin(), m.expectedMax()),
                m.unit(),
                m.after().or(m::before).filter(reading -> isOutside(m, reading)).isPresent(),
                svg(m));
    }

    private static String svg(Measurement m) {
        Scale scale = Scale.of(m);
        StringBuilder svg = new StringBuilder(
                "<svg class='band' xmlns='http://www.w3.org/2000/svg' width='%d' height='%d' viewBox='0 0 %d %d' aria-hidden='true' focusable='false'>"
                        .formatted(WIDTH, HEIGHT, WIDTH, HEIGHT));
        svg.append("<rect x='1' y='7' width='%d' height='12' rx='3' class='band-track'/>".formatted(WIDTH - 2));
        if (m.expectedMin().isPresent() || m.expectedMax().isPresent()) {
            int from = m.expectedMin().isPresent() ? scale.at(m.expectedMin().getAsDouble()) : 2;
            int to = m.expectedMax().isPresent() ? scale.at(m.expectedMax().getAsDouble()) : WIDTH - 2;
            svg.append("<rect x='%d' y='7' width='%d' height='12' class='band-expected'/>"
                    .formatted(from, Math.max(2, to - from)));
        }
        m.before()
                .ifPresent(reading -> svg.append("<rect x='%d' y='7.5' width='11' height='11' class='band-mark %s'/>"
                        .formatted(scale.at(reading) - 5, tone(m, reading))));
        m.after()
                .ifPresent(reading -> svg.append("<circle cx='%d' cy='13' r='7' class='band-mark band-now %s'/>"
                        .formatted(scale.at(reading), tone(m, reading))));
        return svg.append("</svg>").toString();
    }

    private static String tone(Measurement m, Measurement.Reading reading) {
        return isOutside(m, reading) ? "band-out" : "band-in";
    }

    private static boolean isOutside(Measurement m, Measurement.Reading reading) {
        if (m.expectedMin().isEmpty() && m.expectedMax().isEmpty()) {
            return false;
        }
        return !(reading instanceof Measurement.Value value)
                || value.number() < m.expectedMin().orElse(Double.NEGATIVE_INFINITY)
                || value.number() > m.expectedMax().orElse(Double.POSITIVE_INFINITY);
    }

    /** Places numbers between the edges of the picture. */
    private record Scale(double least, double most) {

        static Scale of(Measurement m) {
            double[] numbers = Stream.of(m.expectedMin(), m.expectedMax(), number(m.before()), number(m.after()))
                    .flatMapToDouble(OptionalDouble::stream)
                    .toArray();
            double least = DoubleStream.of(numbers).min().orElse(0);
            double most = DoubleStream.of(numbers).max().orElse(1);
            double room = most > least ? (most - least) * MARGIN : Math.max(Math.abs(most), 1) * MARGIN;
            return new Scale(least - room, most + room);
        }

        private static OptionalDouble number(Optional<Measurement.Reading> reading) {
            return reading.isPresent() && reading.get() instanceof Measurement.Value value
                    ? OptionalDouble.of(value.number())
                    : OptionalDouble.empty();
        }

        int at(Measurement.Reading reading) {
            return reading instanceof Measurement.Value value ? at(value.number()) : WIDTH - EDGE;
        }

        int at(double number) {
            double part = (number - least) / (most - least);
            return (int) Math.round(EDGE + part * (WIDTH - 3 * EDGE));
        }
    }
}
