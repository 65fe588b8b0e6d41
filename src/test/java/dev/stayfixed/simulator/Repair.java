package dev.stayfixed.simulator;

/**
 * What is wrong with a car, or what a repair left of it.
 *
 * @param failsPerTrip probability that a monitored trip fails
 * @param holdsFor driving cycles after which the old fault is back; {@link #FOR_GOOD} when never
 * @param afterwards probability from then on
 */
public record Repair(double failsPerTrip, int holdsFor, double afterwards) {

    public static final int FOR_GOOD = Integer.MAX_VALUE;

    /** A fault that is there on every trip; as a repair: it did nothing. */
    public static Repair nothing() {
        return new Repair(1, FOR_GOOD, 1);
    }

    public static Repair holds() {
        return new Repair(0, FOR_GOOD, 0);
    }

    public static Repair intermittent(double failsPerTrip) {
        return new Repair(failsPerTrip, FOR_GOOD, failsPerTrip);
    }

    public static Repair holdsFor(int cycles) {
        return new Repair(0, cycles, 1);
    }

    double after(int cycles) {
        return cycles < holdsFor ? failsPerTrip : afterwards;
    }
}
