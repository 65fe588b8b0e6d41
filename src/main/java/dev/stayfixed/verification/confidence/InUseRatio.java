package dev.stayfixed.verification.confidence;

import dev.stayfixed.obd.InUseCounters;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/** How many drives it takes, when a monitor runs in a share of qualifying drives (its in-use ratio). */
public final class InUseRatio {

    private static final int MOST_DRIVES = 10_000;

    /** Drives from which a share is told; of fewer it is mostly chance. Common practice, no source. */
    private static final int ENOUGH = 20;

    private static final double SURE = 0.9;

    private InUseRatio() {}

    /** The fewest drives in which the monitor runs at least {@code runs} times with this confidence; at most 10000. */
    public static int drivesFor(int runs, double ratio, double confidence) {
        CleanTrips.requireProbability("ratio", ratio);
        CleanTrips.requireProbability("confidence", confidence);
        for (int drives = runs; drives < MOST_DRIVES; drives++) {
            if (BinomialDistribution.of(drives, ratio).survivalProbability(runs - 1) >= confidence) {
                return drives;
            }
        }
        return MOST_DRIVES;
    }

    /**
     * How many drives the runs that a fault still needs are likely to take, by what the car itself has counted so far.
     *
     * @param counters as they were read last
     * @param runs still needed, at least 1
     * @return empty where no numerator counts the test of this code, it never ran, or too few drives qualified to tell
     */
    public static Optional<Reason> likely(TroubleCode code, InUseCounters counters, int runs) {
        return counters.numerators(code).entrySet().stream().findFirst().flatMap(ran -> likely(ran, counters, runs));
    }

    private static Optional<Reason> likely(Map.Entry<String, Integer> ran, InUseCounters counters, int runs) {
        OptionalInt qualified = counters.count(ran.getKey().replace("COMP", "COND"));
        if (ran.getValue() == 0 || qualified.isEmpty() || qualified.getAsInt() < ENOUGH) {
            return Optional.empty();
        }
        double ratio = Math.min(1, (double) ran.getValue() / qualified.getAsInt());
        Part numerator = Part.count(ran.getValue());
        Part denominator = Part.count(qualified.getAsInt());
        return Optional.of(Reason.of(
                ConfidenceReason.LIKELY_DRIVES,
                ratio == 1
                        ? Reason.of(ConfidenceReason.RATIO_ALL, numerator, denominator)
                        : Reason.of(ConfidenceReason.RATIO_OF, Quantity.fine(ratio, Unit.ONE), numerator, denominator),
                Reason.of(ConfidenceReason.MORE_RUNS, Part.count(runs)),
                Part.count(drivesFor(runs, ratio, SURE)),
                Quantity.whole(100 * SURE, Unit.PERCENT)));
    }
}
