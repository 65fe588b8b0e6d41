package dev.stayfixed.verification.confidence;

import java.util.OptionalInt;

/**
 * What the clean trips so far prove about a fault that failed only now and then.
 *
 * @param before how often it failed before the repair
 * @param wanted the confidence that the shop wants, 0 to 1
 * @param cleanTrips passed trips in a row since the repair
 */
public record AllClear(Intermittence before, double wanted, int cleanTrips) {

    public AllClear {
        CleanTrips.requireProbability("confidence", wanted);
    }

    /** Clean trips that give the wanted confidence; empty where no plan that anybody drives would. */
    public OptionalInt neededTrips() {
        return before.cleanTripsFor(wanted);
    }

    /** The chance that as many clean trips come about although the fault is as it was. */
    public double chanceItIsFalse() {
        return before.chanceOfFalseAllClear(cleanTrips);
    }

    public boolean isReached() {
        return cleanTrips > 0 && chanceItIsFalse() <= 1 - wanted + 1e-12;
    }

    /** In a sentence or two, with the numbers and their limits. */
    public String words() {
        String history = before.monitored() == 0
                ? "How often it failed before the repair is not known, so any rate is taken as equally likely."
                : "Before the repair it failed in %d of %d monitored trips; the rate itself may be anything from %s to %s (95 %%)."
                        .formatted(
                                before.failed(),
                                before.monitored(),
                                percent(before.rate(0.95).low()),
                                percent(before.rate(0.95).high()));
        String now = cleanTrips == 0
                ? " No clean trip yet, so nothing is proven."
                : " %d clean %s in a row would come about in %s of cases although the fault is as it was."
                        .formatted(cleanTrips, cleanTrips == 1 ? "trip" : "trips", percent(chanceItIsFalse()));
        OptionalInt needed = neededTrips();
        String target = needed.isEmpty()
                ? " No number of trips that anybody drives gives %s confidence.".formatted(percent(wanted))
                : " For %s confidence it takes %d.".formatted(percent(wanted), needed.getAsInt());
        return history + now + target;
    }

    private static String percent(double share) {
        return share > 0 && share < 0.01 ? "less than 1 %" : Math.round(share * 100) + " %";
    }
}
