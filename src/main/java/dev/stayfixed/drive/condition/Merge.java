package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.signal.Signal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Makes one condition of two where meeting the one meets both. */
final class Merge {

    /** km/h; a narrower band cannot be driven in traffic. */
    private static final double NARROWEST = 10;

    private Merge() {}

    static Optional<Condition> of(Condition one, Condition two) {
        if (one.equals(two)) {
            return Optional.of(one);
        }
        if (one.phase() != two.phase()) {
            return Optional.empty();
        }
        if (one instanceof Soak a && two instanceof Soak b) {
            return Optional.of(a.atLeast().compareTo(b.atLeast()) >= 0 ? a : b);
        }
        if (one instanceof AtStart a && two instanceof AtStart b) {
            return common(a.range(), b.range()).map(AtStart::new);
        }
        if (one instanceof StartDifference a && two instanceof StartDifference b) {
            return a.upper() == b.upper() && a.lower() == b.lower()
                    ? Optional.of(a.most() <= b.most() ? a : b)
                    : Optional.empty();
        }
        if (one instanceof Reach a && two instanceof Reach b) {
            return reach(a, b);
        }
        return one instanceof Hold a && two instanceof Hold b ? hold(a, b) : Optional.empty();
    }

    private static Optional<SignalRange> common(SignalRange a, SignalRange b) {
        return a.signal() == b.signal() ? a.overlap(b) : Optional.empty();
    }

    private static Optional<Condition> reach(Reach a, Reach b) {
        boolean alike = a.signal() == b.signal() && a.isRise() == b.isRise();
        Optional<List<SignalRange>> whileIn = all(a.whileIn(), b.whileIn());
        if (!alike || whileIn.isEmpty()) {
            return Optional.empty();
        }
        Optional<Duration> within =
                Stream.concat(a.within().stream(), b.within().stream()).min(Duration::compareTo);
        Duration leadIn = a.leadIn().compareTo(b.leadIn()) <= 0 ? a.leadIn() : b.leadIn();
        return Optional.of(
                new Reach(a.signal(), Math.max(a.amount(), b.amount()), a.isRise(), within, leadIn, whileIn.get()));
    }

    private static Optional<Condition> hold(Hold a, Hold b) {
        Optional<SignalRange> range = common(a.range(), b.range()).filter(Merge::isDrivable);
        Optional<List<SignalRange>> whileIn = all(a.whileIn(), b.whileIn());
        if (range.isEmpty() || whileIn.isEmpty() || isHarder(a, b) || isHarder(b, a)) {
            return Optional.empty();
        }
        Duration longer = a.atLeast().compareTo(b.atLeast()) >= 0 ? a.atLeast() : b.atLeast();
        return Optional.of(new Hold(range.get(), longer, a.unbroken() || b.unbroken(), whileIn.get()));
    }

    /** A long time in pieces and a short one without a break are easier to drive apart. */
    private static boolean isHarder(Hold pieces, Hold piece) {
        return !pieces.unbroken() && piece.unbroken() && pieces.atLeast().compareTo(piece.atLeast()) > 0;
    }

    private static boolean isDrivable(SignalRange range) {
        return range.signal() != Signal.VEHICLE_SPEED
                || range.max() <= NARROWEST
                || range.max() - range.min() >= NARROWEST;
    }

    /** All ranges of both; empty where two for one signal leave nothing. */
    private static Optional<List<SignalRange>> all(List<SignalRange> one, List<SignalRange> two) {
        List<SignalRange> all = new ArrayList<>(one);
        for (SignalRange range : two) {
            int same = indexOf(range.signal(), all);
            if (same < 0) {
                all.add(range);
                continue;
            }
            Optional<SignalRange> overlap = all.get(same).overlap(range);
            if (overlap.isEmpty()) {
                return Optional.empty();
            }
            all.set(same, overlap.get());
        }
        return Optional.of(all);
    }

    private static int indexOf(Signal signal, List<SignalRange> ranges) {
        for (int i = 0; i < ranges.size(); i++) {
            if (ranges.get(i).signal() == signal) {
                return i;
            }
        }
        return -1;
    }
}
