package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.OptionalDouble;

/** The value of a signal at the start: the first that the log gives, if it gives one in the first minute. */
final class FirstValue {

    private static final long START = 60_000;

    private final Signal signal;
    private OptionalDouble value = OptionalDouble.empty();
    private long at;

    FirstValue(Signal signal) {
        this.signal = signal;
    }

    void row(long time, SignalRow row) {
        if (value.isEmpty()) {
            value = row.value(signal);
            at = time;
        }
    }

    boolean isKnown() {
        return value.isPresent() && at <= START;
    }

    double value() {
        return value.orElse(Double.NaN);
    }

    /** Why it is not known. */
    Reason missing() {
        return value.isEmpty()
                ? Reason.of(ConditionReason.SIGNAL_NOT_RECORDED, signal)
                : Reason.of(ConditionReason.SIGNAL_LATE, signal, Part.Time.length(at));
    }
}
