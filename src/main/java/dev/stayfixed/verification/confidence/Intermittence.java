package dev.stayfixed.verification.confidence;

import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.interval.BinomialConfidenceInterval;
import org.apache.commons.statistics.interval.Interval;

/**
 * How often a fault failed before its repair: {@code failed} of {@code monitored} trips. The rate itself is not known, only these
 * few trips, so the clean trips asked for allow for that (beta-binomial with a uniform prior).
 */
public record Intermittence(int failed, int monitored) {

    /** More clean trips than this are not a plan that anybody drives. */
    private static final int MOST_TRIPS = 1000;

    public Intermittence {
        if (failed < 0 || monitored < failed) {
            throw new IllegalArgumentException(
                    "found %d failed of %d monitored trips, expected 0 to that many".formatted(failed, monitored));
        }
    }

    /** Clopper-Pearson interval of the failure rate, two-sided; 0 to 1 where no trip was monitored. */
    public Rate rate(double confidence) {
        return Rate.of(failed, monitored, confidence);
    }

    /** Both ends of an interval of failure rates per monitored trip. */
    public record Rate(double low, double high) {

        /** Clopper-Pearson interval of the rate behind {@code part} of {@code whole}, two-sided; 0 to 1 where there is no whole. */
        public static Rate of(int part, int whole, double confidence) {
            CleanTrips.requireProbability("confidence", confidence);
            if (whole == 0) {
                return new Rate(0, 1);
            }
            Interval interval = BinomialConfidenceInterval.CLOPPER_PEARSON.fromErrorRate(whole, part, 1 - confidence);
            return new Rate(interval.getLowerBound(), interval.getUpperBound());
        }
    }

    /** The chance that all n trips are clean although the fault is as it was: the chance of a false all-clear. */
    public double chanceOfFalseAllClear(int trips) {
        double chance = 1;
        for (int i = 0; i < trips; i++) {
            chance *= (1.0 + monitored - failed + i) / (2.0 + monitored + i);
        }
        return chance;
    }

    /** The chance that the repair holds after n clean trips, if it was {@code prior} before them. */
    public double chanceFixed(double prior, int trips) {
        CleanTrips.requireProbability("prior", prior);
        return prior / (prior + (1 - prior) * chanceOfFalseAllClear(trips));
    }

    /** The failure rate to expect of the next trip, given these. */
    public double expectedRate() {
        return (1.0 + failed) / (2.0 + monitored);
    }

    /** The fewest clean trips that leave at most 1 - confidence for a false all-clear; empty beyond 1000. */
    public OptionalInt cleanTripsFor(double confidence) {
        CleanTrips.requireProbability("confidence", confidence);
        double chance = 1;
        for (int trips = 1; trips <= MOST_TRIPS; trips++) {
            chance *= (monitored - failed + (double) trips) / (1.0 + monitored + trips);
            if (chance <= 1 - confidence + 1e-12) {
                return OptionalInt.of(trips);
            }
        }
        return OptionalInt.empty();
    }

    /** The chance that the failure rate is at most {@code limit}, given these trips. */
    public double chanceThatRateIsAtMost(double limit) {
        return BetaDistribution.of(1.0 + failed, 1.0 + monitored - failed).cumulativeProbability(limit);
    }
}
