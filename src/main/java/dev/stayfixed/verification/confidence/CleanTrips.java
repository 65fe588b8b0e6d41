package dev.stayfixed.verification.confidence;

import java.util.OptionalInt;

/**
 * A fault that is still present fails each monitored trip independently with probability p. What do n clean trips prove? All
 * formulae are elementary binomial ones.
 */
public final class CleanTrips {

    private CleanTrips() {}

    /** The chance that a fault still present shows no failure in n monitored trips. */
    public static double chanceOfNoFailure(double failureRate, int trips) {
        requireProbability("failure rate", failureRate);
        return Math.pow(1 - failureRate, trips);
    }

    /**
     * The clean trips after which a fault still present would have shown with this confidence.
     *
     * @return empty where no number of trips is enough: the fault never fails, or certainty is asked for
     */
    public static OptionalInt neededFor(double confidence, double failureRate) {
        requireProbability("confidence", confidence);
        requireProbability("failure rate", failureRate);
        if (failureRate == 1) {
            return OptionalInt.of(1);
        }
        if (failureRate == 0 || confidence == 1) {
            return OptionalInt.empty();
        }
        double trips = Math.log1p(-confidence) / Math.log1p(-failureRate);
        return OptionalInt.of(Math.max(1, (int) Math.ceil(trips - 1e-9)));
    }

    /**
     * The chance that a fault still present never fails twice in a row in n monitored trips: what one is blind to who watches the
     * MIL alone.
     */
    public static double chanceOfNoTwoFailuresInARow(double failureRate, int trips) {
        requireProbability("failure rate", failureRate);
        double lastPassed = 1;
        double lastFailed = 0;
        for (int i = 0; i < trips; i++) {
            double passedNow = (lastPassed + lastFailed) * (1 - failureRate);
            lastFailed = lastPassed * failureRate;
            lastPassed = passedNow;
        }
        return lastPassed + lastFailed;
    }

    /** The chance that the repair holds after n clean trips, if it was {@code prior} before them. */
    public static double chanceFixed(double prior, double failureRate, int trips) {
        requireProbability("prior", prior);
        return prior / (prior + (1 - prior) * chanceOfNoFailure(failureRate, trips));
    }

    static void requireProbability(String what, double value) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException(what + ": found " + value + ", expected 0 to 1");
        }
    }
}
