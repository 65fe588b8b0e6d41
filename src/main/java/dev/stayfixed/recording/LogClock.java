package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Timeline;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/**
 * Follows the time column of one log. A time of day that falls by more than twelve hours has passed midnight; whatever else goes
 * backward is noted, and a clock that runs wild makes the log implausible.
 */
final class LogClock {

    private static final long HOUR = 3_600_000;
    private static final long HALF_DAY = 12 * HOUR;
    private static final long DAY = 24 * HOUR;
    private static final long LONGEST_DRIVE = 4 * DAY;
    private static final long FARTHEST_BACK = 60_000;

    private final TimeFormat format;
    private final NoteLog notes;
    private long first;
    private long latest;
    private long offset;
    private long farthestBack;
    private long longestStep;
    private boolean started;

    LogClock(TimeFormat format, NoteLog notes) {
        this.format = format;
        this.notes = notes;
    }

    /** The row's time on a clock that knows days. */
    long advance(long read, long line, Supplier<String> text) {
        long time = read + offset;
        if (!started) {
            started = true;
            first = time;
            latest = time;
            return time;
        }
        if (format == TimeFormat.TIME_OF_DAY && time < latest - HALF_DAY) {
            offset += DAY;
            time += DAY;
            notes.add(NoteKind.MIDNIGHT, line, "", text);
        }
        long step = time - latest;
        note(step, line, text);
        farthestBack = Math.max(farthestBack, -step);
        longestStep = Math.max(longestStep, step);
        latest = Math.max(latest, time);
        return time;
    }

    /** Whether a time is farther from the latest than rows of one drive usually are. */
    boolean isAstray(long read) {
        long step = step(read);
        return step > HOUR || step < -FARTHEST_BACK;
    }

    /** Whether the next piece of a log may begin at this time: not before the end of this one, and not long after it. */
    boolean goesOn(long read) {
        long step = step(read);
        return started && step >= 0 && step <= HALF_DAY;
    }

    private long step(long read) {
        long time = read + offset;
        boolean midnight = format == TimeFormat.TIME_OF_DAY && time < latest - HALF_DAY;
        return time + (midnight ? DAY : 0) - latest;
    }

    private void note(long step, long line, Supplier<String> text) {
        if (step == 0) {
            notes.add(NoteKind.REPEATED_TIME, line, "", text);
        } else if (step < 0) {
            notes.add(NoteKind.BACKWARD_TIME, line, "", text);
        } else if (step > Timeline.LONGEST_STEP) {
            notes.add(NoteKind.GAP, line, "", text);
        }
    }

    long first() {
        return first;
    }

    List<Reason> wildness(long rows) {
        List<Reason> reasons = new ArrayList<>();
        if (farthestBack > FARTHEST_BACK) {
            reasons.add(Reason.of(LogReason.TIME_GOES_BACK, Part.count(farthestBack / 1000)));
        }
        if (longestStep > HALF_DAY) {
            reasons.add(Reason.of(LogReason.TIME_LEAPS, Part.count(longestStep / HOUR)));
        }
        if (latest - first > LONGEST_DRIVE) {
            reasons.add(Reason.of(LogReason.LONGER_THAN_A_DRIVE, Part.count((latest - first) / HOUR)));
        }
        if (rows > 1 && latest == first && farthestBack == 0) {
            reasons.add(Reason.of(LogReason.ONE_TIME));
        }
        return reasons;
    }
}
