package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.util.Optional;

/**
 * What was recorded since the counters were last read.
 *
 * @param distance km; empty once a drive without a distance is among them
 */
record RecordedSince(int drives, Optional<Double> distance) {

    static final RecordedSince NOTHING = new RecordedSince(0, Optional.of(0.0));

    RecordedSince with(DriveRecord drive) {
        var driven = drive.summary().value(DriveQuantity.DISTANCE);
        return new RecordedSince(
                drives + 1, driven.isPresent() ? distance.map(d -> d + driven.getAsDouble()) : Optional.empty());
    }

    Optional<Reason> gap(Counters from, Counters to) {
        var cycles = from.ignitionCyclesTo(to);
        if (cycles.isPresent() && cycles.getAsInt() > drives) {
            int missing = cycles.getAsInt() - drives;
            return Optional.of(Reason.of(StepReason.CYCLES_MISSING, Part.count(missing)));
        }
        var driven = from.distanceTo(to);
        return driven.isPresent()
                        && distance.isPresent()
                        && driven.getAsDouble() - distance.get() > Counters.ROUNDING_KM
                ? Optional.of(Reason.of(
                        StepReason.DISTANCE_MISSING,
                        Quantity.whole(driven.getAsDouble() - distance.get(), Unit.KILOMETRE)))
                : Optional.empty();
    }
}
