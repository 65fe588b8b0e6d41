package dev.stayfixed.verification.confidence;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.reason.Unit;
import java.util.List;
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

    /** In a few sentences, with the numbers and their limits. */
    public Reason said() {
        return Shape.SENTENCES.of(List.of(history(), now(), target()));
    }

    private Reason history() {
        if (before.monitored() == 0) {
            return Reason.of(ConfidenceReason.RATE_UNKNOWN);
        }
        Intermittence.Rate rate = before.rate(0.95);
        return Reason.of(
                ConfidenceReason.FAILED_BEFORE,
                Part.count(before.failed()),
                Part.count(before.monitored()),
                percent(rate.low()),
                percent(rate.high()));
    }

    private Reason now() {
        return cleanTrips == 0
                ? Reason.of(ConfidenceReason.NO_CLEAN_TRIP)
                : Reason.of(ConfidenceReason.CLEAN_BY_CHANCE, Part.count(cleanTrips), percent(chanceItIsFalse()));
    }

    private Reason target() {
        OptionalInt needed = neededTrips();
        return needed.isEmpty()
                ? Reason.of(ConfidenceReason.NO_NUMBER_OF_TRIPS, percent(wanted))
                : Reason.of(ConfidenceReason.TRIPS_FOR, percent(wanted), Part.count(needed.getAsInt()));
    }

    private static Part percent(double share) {
        return share > 0 && share < 0.01
                ? Reason.of(ConfidenceReason.LESS_THAN, Quantity.whole(1, Unit.PERCENT))
                : Quantity.whole(share * 100, Unit.PERCENT);
    }
}
