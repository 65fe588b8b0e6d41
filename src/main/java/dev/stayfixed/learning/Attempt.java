package dev.stayfixed.learning;

import dev.stayfixed.verification.StateName;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.UUID;

/**
 * How one repair of one fault went.
 *
 * @param position 0 for the first repair of the fault
 * @param repair what was done, in the shop's words
 * @param failedAt the drive that proved that it did not hold
 * @param followedUntil the last drive that was judged for it, or the next repair; the repair itself where there was none
 * @param kmFollowed km that are known to have been driven until then
 * @param kmToFailure likewise until it failed
 */
record Attempt(
        UUID repairId,
        UUID faultId,
        UUID vehicleId,
        UUID jobId,
        int position,
        String code,
        String group,
        String repair,
        Instant performedAt,
        StateName state,
        Optional<Instant> provenAt,
        OptionalInt drivesToProof,
        Optional<Instant> failedAt,
        Instant followedUntil,
        double kmFollowed,
        OptionalDouble kmToFailure) {

    double daysFollowed() {
        return days(failedAt.orElse(followedUntil));
    }

    double days(Instant end) {
        return Math.max(0, Duration.between(performedAt, end).toMillis() / 86_400_000.0);
    }
}
