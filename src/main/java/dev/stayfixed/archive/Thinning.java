package dev.stayfixed.archive;

import dev.stayfixed.drive.condition.Interval;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Thins rows out to the lowest and highest value of each stretch of time. */
final class Thinning implements Consumer<SignalRow> {

    private static final int MOST_GAPS = 10_000;

    private final Set<Signal> wanted;
    private final double width;
    private final Timeline timeline = new Timeline();
    private final Map<Signal, List<SignalSeries.Point>> done = new EnumMap<>(Signal.class);
    private final Map<Signal, Stretch> open = new EnumMap<>(Signal.class);
    private final List<Interval> gaps = new ArrayList<>();

    /**
     * Starts with nothing.
     *
     * @param length ms of the whole log
     * @param points at most so many a signal
     */
    Thinning(Set<Signal> wanted, long length, int points) {
        this.wanted = wanted;
        this.width = Math.max(1, (length + 1.0) / Math.max(1, points / 2));
    }

    /** One stretch of time and its extremes so far. */
    private record Stretch(long number, SignalSeries.Point lowest, SignalSeries.Point highest) {

        Stretch with(SignalSeries.Point point) {
            return new Stretch(
                    number,
                    point.value() < lowest.value() ? point : lowest,
                    point.value() > highest.value() ? point : highest);
        }

        Stream<SignalSeries.Point> inOrder() {
            if (lowest.equals(highest)) {
                return Stream.of(lowest);
            }
            return lowest.at() <= highest.at() ? Stream.of(lowest, highest) : Stream.of(highest, lowest);
        }
    }

    @Override
    public void accept(SignalRow row) {
        Timeline.Step step = timeline.moveTo(row.millis());
        if (step.isGap() && gaps.size() < MOST_GAPS) {
            gaps.add(new Interval(step.from(), step.to()));
        }
        row.forEach((signal, value) -> {
            if (wanted.contains(signal)) {
                add(signal, new SignalSeries.Point(step.to(), value));
            }
        });
    }

    private void add(Signal signal, SignalSeries.Point point) {
        long number = (long) (point.at() / width);
        @Nullable Stretch known = open.get(signal);
        if (known != null && known.number() == number) {
            open.put(signal, known.with(point));
        } else {
            if (known != null) {
                close(signal, known);
            }
            open.put(signal, new Stretch(number, point, point));
        }
    }

    private void close(Signal signal, Stretch stretch) {
        List<SignalSeries.Point> points = done.computeIfAbsent(signal, s -> new ArrayList<>());
        stretch.inOrder().forEach(points::add);
    }

    Map<Signal, List<SignalSeries.Point>> signals() {
        open.forEach(this::close);
        open.clear();
        return done;
    }

    List<Interval> gaps() {
        return gaps;
    }
}
