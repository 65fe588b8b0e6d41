package dev.stayfixed.judging;

import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.running.Run;
import dev.stayfixed.drive.running.RunningCheck;
import dev.stayfixed.drive.running.Steady;
import dev.stayfixed.drive.running.WarmUp;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.bench.BenchRuns;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The runs of a check on its band, in a field of 520 by 170: a steady signal has to stay in the band, a warm-up to come into it. Reports
 * keep it as it is: a part may be added, never changed.
 *
 * @param before the points of a line, "x,y x,y"; missing where no run counts. Likewise {@code after}
 */
public record RunPicture(
        int bandX,
        int bandY,
        int bandWidth,
        int bandHeight,
        @Nullable String before,
        @Nullable String after) {

    private static final int WIDTH = 520;
    private static final int HEIGHT = 170;
    private static final double ROOM = 0.08;

    /** A picture, and what its edges stand for. */
    public record Drawn(RunPicture picture, Reason axes) {}

    /** Empty where there is nothing to draw. */
    public static Optional<Drawn> of(BenchRuns runs) {
        boolean isEmpty = Stream.of(runs.before(), runs.after())
                .flatMap(Optional::stream)
                .allMatch(run -> run.curve().isEmpty());
        return isEmpty ? Optional.empty() : Optional.of(new Field(runs).drawn(runs));
    }

    /** Where numbers lie in the field. */
    private static final class Field {

        private final SignalRange band;
        private final OptionalLong until;
        private final double low;
        private final double high;
        private final long length;

        Field(BenchRuns runs) {
            band = runs.check().range();
            until = within(runs.check());
            double[] values = DoubleStream.concat(
                            DoubleStream.of(band.min(), band.max()).filter(Double::isFinite),
                            points(runs).mapToDouble(Run.Point::value))
                    .toArray();
            double least = DoubleStream.of(values).min().orElse(0);
            double most = DoubleStream.of(values).max().orElse(1);
            double room = Math.max((most - least) * ROOM, 0.5);
            low = Math.floor(least - room);
            high = Math.ceil(most + room);
            length = Math.max(
                    1_000, Math.max(points(runs).mapToLong(Run.Point::at).max().orElse(0), until.orElse(0)));
        }

        private static Stream<Run.Point> points(BenchRuns runs) {
            return Stream.of(runs.before(), runs.after())
                    .flatMap(Optional::stream)
                    .flatMap(run -> run.curve().stream());
        }

        /** A warm-up has so long; a steady signal has no end. */
        private static OptionalLong within(RunningCheck check) {
            return check.match(new RunningCheck.Cases<>() {
                @Override
                public OptionalLong warmUp(WarmUp warmUp) {
                    return OptionalLong.of(warmUp.within().toMillis());
                }

                @Override
                public OptionalLong steady(Steady steady) {
                    return OptionalLong.empty();
                }
            });
        }

        private int x(long at) {
            return (int) Math.round((double) at / length * WIDTH);
        }

        private int y(double value) {
            return (int) Math.round((high - value) / (high - low) * HEIGHT);
        }

        private static double or(double limit, double edge) {
            return OptionalDouble.of(limit).stream()
                    .filter(Double::isFinite)
                    .findFirst()
                    .orElse(edge);
        }

        Drawn drawn(BenchRuns runs) {
            int top = y(or(band.max(), high));
            RunPicture picture = new RunPicture(
                    0,
                    top,
                    until.isPresent() ? x(until.getAsLong()) : WIDTH,
                    y(or(band.min(), low)) - top,
                    line(runs.before()),
                    line(runs.after()));
            return new Drawn(
                    picture,
                    Reason.of(
                            CheckReason.AXES,
                            Quantity.of(low, band.signal().measure()),
                            Quantity.of(high, band.signal().measure()),
                            Part.Time.length(length)));
        }

        private @Nullable String line(Optional<Run> run) {
            return run.filter(drawn -> !drawn.curve().isEmpty())
                    .map(drawn -> drawn.curve().stream()
                            .map(point -> x(point.at()) + "," + y(point.value()))
                            .distinct()
                            .collect(Collectors.joining(" ")))
                    .orElse(null);
        }
    }
}
