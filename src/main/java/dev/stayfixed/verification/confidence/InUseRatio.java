package dev.stayfixed.verification.confidence;

import org.apache.commons.statistics.distribution.BinomialDistribution;

/** How many drives it takes, when a monitor runs in a share of qualifying drives (its in-use ratio). */
public final class InUseRatio {

    private static final int MOST_DRIVES = 10_000;

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
}
