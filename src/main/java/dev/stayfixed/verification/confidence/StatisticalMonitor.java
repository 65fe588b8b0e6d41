package dev.stayfixed.verification.confidence;

/**
 * An exponentially weighted moving average, as statistical monitors keep it: new = k x + (1 - k) old. It needs several trips to
 * follow a repair; 13 CCR 1968.2 allows six on average to light the MIL (from memory).
 */
public record StatisticalMonitor(double weight, double average) {

    public StatisticalMonitor {
        CleanTrips.requireProbability("weight", weight);
    }

    public StatisticalMonitor after(double result) {
        return new StatisticalMonitor(weight, weight * result + (1 - weight) * average);
    }

    /** How much of the average is still from before, after n results. */
    public double shareOfOldAfter(int results) {
        return Math.pow(1 - weight, results);
    }

    /** The fewest results of {@code result} each after which the average is at or below {@code limit}; at most {@code most}. */
    public int resultsUntilAtMost(double limit, double result, int most) {
        StatisticalMonitor monitor = this;
        for (int n = 0; n < most; n++) {
            if (monitor.average <= limit) {
                return n;
            }
            monitor = monitor.after(result);
        }
        return most;
    }
}
