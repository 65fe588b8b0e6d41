package dev.stayfixed.drive.running;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A curve of at most 200 points, however long the run: of each stretch of time the lowest and the highest value, so that no peak is
 * lost. Where there would be too many stretches, each two become one.
 */
final class Curve {

    private static final int MOST_STRETCHES = 100;

    private final List<Stretch> stretches = new ArrayList<>();
    private long width = 1_000;

    private record Stretch(long number, Run.Point lowest, Run.Point highest) {

        Stretch with(Stretch other) {
            return new Stretch(
                    number,
                    other.lowest.value() < lowest.value() ? other.lowest : lowest,
                    other.highest.value() > highest.value() ? other.highest : highest);
        }

        Stream<Run.Point> inOrder() {
            if (lowest.equals(highest)) {
                return Stream.of(lowest);
            }
            return lowest.at() <= highest.at() ? Stream.of(lowest, highest) : Stream.of(highest, lowest);
        }
    }

    /** Times never go back. */
    void add(long at, double value) {
        if (!Double.isNaN(value)) {
            Run.Point point = new Run.Point(at, value);
            append(stretches, new Stretch(Math.floorDiv(at, width), point, point));
            while (stretches.size() > MOST_STRETCHES) {
                halve();
            }
        }
    }

    private static void append(List<Stretch> stretches, Stretch next) {
        int last = stretches.size() - 1;
        if (last >= 0 && stretches.get(last).number() == next.number()) {
            stretches.set(last, stretches.get(last).with(next));
        } else {
            stretches.add(next);
        }
    }

    private void halve() {
        width *= 2;
        List<Stretch> before = List.copyOf(stretches);
        stretches.clear();
        before.forEach(s -> append(stretches, new Stretch(Math.floorDiv(s.number(), 2), s.lowest(), s.highest())));
    }

    /** The points from a moment on, counted from it. */
    List<Run.Point> from(long start) {
        return stretches.stream()
                .flatMap(Stretch::inOrder)
                .filter(point -> point.at() >= start)
                .map(point -> new Run.Point(point.at() - start, point.value()))
                .toList();
    }
}
