package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Leaves out single values that jump away and back as no car can, and a first value that the next ones do not go on from. Rows are held
 * until their values are settled, at most {@link #MOST_HELD} of them; what is not settled by then is handed on as it is.
 */
final class StrayValues {

    private static final int MOST_HELD = 200;

    private final NoteLog notes;
    private final Consumer<SignalRow> sink;
    private final Deque<Held> held = new ArrayDeque<>();
    private final Map<Signal, Course> courses = new EnumMap<>(Signal.class);

    private static final class Held {
        private final long millis;
        private final long line;
        private final Map<Signal, Double> values;
        private int open;

        Held(long millis, long line, Map<Signal, Double> values) {
            this.millis = millis;
            this.line = line;
            this.values = values;
        }

        double value(Signal signal) {
            return Objects.requireNonNull(values.get(signal));
        }
    }

    /** What is known of one signal: its last settled row, and one that is not settled. */
    private static final class Course {
        private long millis;
        private double value = Double.NaN;
        private @Nullable Held doubtful;
        private @Nullable Held second;
    }

    StrayValues(NoteLog notes, Consumer<SignalRow> sink) {
        this.notes = notes;
        this.sink = sink;
    }

    /**
     * Takes a row.
     *
     * @param values may be changed until the row is handed on
     */
    void accept(long millis, long line, Map<Signal, Double> values) {
        Held row = new Held(millis, line, values);
        held.add(row);
        for (Signal signal : values.keySet().toArray(new Signal[0])) {
            if (Pace.of(signal).isPresent()) {
                look(signal, row);
            }
        }
        if (held.size() > MOST_HELD) {
            Held oldest = held.getFirst();
            courses.forEach((signal, course) -> {
                if (course.doubtful == oldest || course.second == oldest) {
                    release(course, signal);
                }
            });
        }
        handOn();
    }

    private void look(Signal signal, Held row) {
        Course course = courses.computeIfAbsent(signal, s -> new Course());
        Held doubtful = course.doubtful;
        if (doubtful == null) {
            boolean first = Double.isNaN(course.value);
            if (first || !follows(signal, course.millis, course.value, row)) {
                course.doubtful = row;
                row.open++;
            } else {
                settle(course, row, signal);
            }
            return;
        }
        boolean goesOn = follows(signal, doubtful.millis, doubtful.value(signal), row);
        if (Double.isNaN(course.value)) {
            first(signal, course, doubtful, row, goesOn);
        } else if (goesOn || !follows(signal, course.millis, course.value, row)) {
            course.doubtful = null;
            doubtful.open--;
            settle(course, doubtful, signal);
            look(signal, row);
        } else {
            drop(signal, doubtful);
            course.doubtful = null;
            settle(course, row, signal);
        }
    }

    /** Of the first two values of a signal the third tells which one was stray. */
    private void first(Signal signal, Course course, Held first, Held row, boolean goesOn) {
        Held second = course.second;
        if (second == null && !goesOn) {
            course.second = row;
            row.open++;
            return;
        }
        course.doubtful = null;
        course.second = null;
        if (second == null) {
            first.open--;
            settle(course, row, signal);
            return;
        }
        boolean goesOnFromSecond = follows(signal, second.millis, second.value(signal), row);
        if (goesOnFromSecond && !goesOn) {
            drop(signal, first);
            second.open--;
        } else if (goesOn && !goesOnFromSecond) {
            first.open--;
            drop(signal, second);
        } else {
            first.open--;
            second.open--;
        }
        settle(course, row, signal);
    }

    private void drop(Signal signal, Held row) {
        notes.add(NoteKind.STRAY_VALUE, row.line, signal.words(), String.valueOf(row.value(signal)));
        row.values.remove(signal);
        row.open--;
    }

    private static void settle(Course course, Held row, Signal signal) {
        course.millis = row.millis;
        course.value = row.value(signal);
    }

    /** Takes what is not settled as it is. */
    private static void release(Course course, Signal signal) {
        List<Held> open = Stream.of(Optional.ofNullable(course.doubtful), Optional.ofNullable(course.second))
                .flatMap(Optional::stream)
                .toList();
        for (Held row : open) {
            row.open--;
            settle(course, row, signal);
        }
        course.doubtful = null;
        course.second = null;
    }

    private static boolean follows(Signal signal, long millis, double value, Held row) {
        long step = row.millis - millis;
        return step > Timeline.LONGEST_STEP
                || Pace.of(signal)
                        .filter(pace -> Math.abs(row.value(signal) - value) > pace.within(Math.abs(step)))
                        .isEmpty();
    }

    private void handOn() {
        while (!held.isEmpty() && held.getFirst().open == 0) {
            Held row = held.remove();
            sink.accept(new SignalRow(row.millis, row.values));
        }
    }

    /** Hands on what is still held. */
    void end() {
        courses.forEach((signal, course) -> release(course, signal));
        handOn();
    }
}
