package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
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
    private final List<Course> courses = Arrays.stream(Signal.values())
            .flatMap(signal -> Pace.of(signal).map(pace -> new Course(signal, pace)).stream())
            .toList();

    private static final class Held {
        private final long millis;
        private final long line;
        private final double[] values;
        private int open;

        Held(long millis, long line, double[] values) {
            this.millis = millis;
            this.line = line;
            this.values = values;
        }
    }

    /** What is known of one signal: its last settled row, and one that is not settled. */
    private static final class Course {
        private final Signal signal;
        private final Pace pace;
        private long millis;
        private double value = Double.NaN;
        private @Nullable Held doubtful;
        private @Nullable Held second;

        Course(Signal signal, Pace pace) {
            this.signal = signal;
            this.pace = pace;
        }

        double in(Held row) {
            return row.values[signal.index()];
        }

        void settle(Held row) {
            millis = row.millis;
            value = in(row);
        }

        boolean goesOnIn(Held row) {
            return follows(millis, value, row);
        }

        boolean goesOn(Held from, Held row) {
            return follows(from.millis, in(from), row);
        }

        private boolean follows(long from, double known, Held row) {
            long step = row.millis - from;
            return step > Timeline.LONGEST_STEP || !(Math.abs(in(row) - known) > pace.within(Math.abs(step)));
        }
    }

    StrayValues(NoteLog notes, Consumer<SignalRow> sink) {
        this.notes = notes;
        this.sink = sink;
    }

    /**
     * Takes a row.
     *
     * @param values one for each signal, by its ordinal, NaN where there is none; may be changed until the row is handed on
     */
    void accept(long millis, long line, double[] values) {
        Held row = new Held(millis, line, values);
        held.add(row);
        for (int i = 0; i < courses.size(); i++) {
            Course course = courses.get(i);
            if (!Double.isNaN(course.in(row))) {
                look(course, row);
            }
        }
        if (held.size() > MOST_HELD) {
            Held oldest = held.getFirst();
            for (Course course : courses) {
                if (course.doubtful == oldest || course.second == oldest) {
                    release(course);
                }
            }
        }
        handOn();
    }

    private void look(Course course, Held row) {
        Held doubtful = course.doubtful;
        if (doubtful == null) {
            boolean first = Double.isNaN(course.value);
            if (first || !course.goesOnIn(row)) {
                course.doubtful = row;
                row.open++;
            } else {
                course.settle(row);
            }
            return;
        }
        boolean goesOn = course.goesOn(doubtful, row);
        if (Double.isNaN(course.value)) {
            first(course, doubtful, row, goesOn);
        } else if (goesOn || !course.goesOnIn(row)) {
            course.doubtful = null;
            doubtful.open--;
            course.settle(doubtful);
            look(course, row);
        } else {
            drop(course, doubtful);
            course.doubtful = null;
            course.settle(row);
        }
    }

    /** Of the first two values of a signal the third tells which one was stray. */
    private void first(Course course, Held first, Held row, boolean goesOn) {
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
            course.settle(row);
            return;
        }
        boolean goesOnFromSecond = course.goesOn(second, row);
        if (goesOnFromSecond && !goesOn) {
            drop(course, first);
            second.open--;
        } else if (goesOn && !goesOnFromSecond) {
            first.open--;
            drop(course, second);
        } else {
            first.open--;
            second.open--;
        }
        course.settle(row);
    }

    private void drop(Course course, Held row) {
        notes.add(NoteKind.STRAY_VALUE, row.line, course.signal.words(), String.valueOf(course.in(row)));
        row.values[course.signal.index()] = Double.NaN;
        row.open--;
    }

    /** Takes what is not settled as it is. */
    private static void release(Course course) {
        List<Held> open = Stream.of(Optional.ofNullable(course.doubtful), Optional.ofNullable(course.second))
                .flatMap(Optional::stream)
                .toList();
        for (Held row : open) {
            row.open--;
            course.settle(row);
        }
        course.doubtful = null;
        course.second = null;
    }

    private void handOn() {
        while (!held.isEmpty() && held.getFirst().open == 0) {
            Held row = held.remove();
            sink.accept(SignalRow.ofValues(row.millis, row.values));
        }
    }

    /** Hands on what is still held. */
    void end() {
        courses.forEach(StrayValues::release);
        handOn();
    }
}
