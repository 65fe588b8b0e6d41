package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.signal.Timeline;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.List;
import java.util.Optional;

/** For how long each of several ranges stood in the way, and which of them were never recorded. */
final class Blocked {

    private final List<SignalRange> ranges;
    private final long[] millis;
    private final boolean[] known;

    Blocked(List<SignalRange> ranges) {
        this.ranges = ranges;
        this.millis = new long[ranges.size()];
        this.known = new boolean[ranges.size()];
    }

    void look(Timeline held) {
        for (int i = 0; i < known.length; i++) {
            known[i] |= ranges.get(i).isKnown(held);
        }
    }

    /** Whether all hold; where not, the time is put down to those that do not. */
    boolean allHold(Timeline held, long length) {
        boolean all = true;
        for (int i = 0; i < millis.length; i++) {
            if (!ranges.get(i).holds(held)) {
                millis[i] += length;
                all = false;
            }
        }
        return all;
    }

    Optional<SignalRange> neverRecorded() {
        for (int i = 0; i < known.length; i++) {
            if (!known[i]) {
                return Optional.of(ranges.get(i));
            }
        }
        return Optional.empty();
    }

    /** "for 25 s coolant temperature at least 70 °C did not hold", for the worst of them. */
    Optional<Reason> worst() {
        int worst = -1;
        for (int i = 0; i < millis.length; i++) {
            worst = millis[i] > (worst < 0 ? 0 : millis[worst]) ? i : worst;
        }
        return worst < 0
                ? Optional.empty()
                : Optional.of(Reason.of(
                        ConditionReason.DID_NOT_HOLD,
                        Part.Time.length(millis[worst]),
                        ranges.get(worst).said()));
    }
}
