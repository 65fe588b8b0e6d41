package dev.stayfixed.drive;

import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import java.util.OptionalDouble;

/**
 * One enabling condition of a monitor, as service information states it for a whole drive: a quantity inside limits, both inclusive.
 */
public record EnablingCondition(DriveQuantity quantity, OptionalDouble min, OptionalDouble max) {

    public EnablingCondition {
        if (min.isEmpty() && max.isEmpty()) {
            throw new IllegalArgumentException(
                    quantity.words() + ": found no limit, expected a lower or an upper limit or both");
        }
        if (min.isPresent() && max.isPresent() && min.getAsDouble() > max.getAsDouble()) {
            throw new IllegalArgumentException("%s: found limits %s to %s, expected the lower one first"
                    .formatted(quantity.words(), min.getAsDouble(), max.getAsDouble()));
        }
    }

    /** Whether the drive met it, and by how much it was missed. */
    public Finding heldIn(DriveSummary summary) {
        OptionalDouble found = summary.value(quantity);
        if (found.isEmpty()) {
            return Finding.unknown(Reason.of(DriveReason.NOT_RECORDED, quantity, limits()));
        }
        double value = found.getAsDouble();
        OptionalDouble most = summary.atMost(quantity);
        if (most.isPresent() && isOpen(value, most.getAsDouble())) {
            return Finding.unknown(Reason.of(
                    DriveReason.FOUND_AT_LEAST, quantity, amount(value), limits(), amount(most.getAsDouble())));
        }
        if (min.isPresent() && value < min.getAsDouble()) {
            return missed(DriveReason.FOUND_SHORT, value, min.getAsDouble() - value);
        }
        if (max.isPresent() && value > max.getAsDouble()) {
            return missed(DriveReason.FOUND_OVER, value, value - max.getAsDouble());
        }
        return Finding.yes(Reason.of(DriveReason.FOUND, quantity, amount(value), limits()));
    }

    private Finding missed(DriveReason how, double value, double by) {
        Quantity missed = Quantity.fine(by, quantity.measure().ofDifference());
        return Finding.no(Reason.of(how, quantity, amount(value), limits(), missed));
    }

    private Quantity amount(double value) {
        return Quantity.fine(value, quantity.measure());
    }

    /** Whether a value between these two may lie on either side of a limit. */
    private boolean isOpen(double least, double most) {
        boolean low = min.isPresent() && least < min.getAsDouble() && most >= min.getAsDouble();
        boolean high = max.isPresent() && least <= max.getAsDouble() && most > max.getAsDouble();
        return low || high;
    }

    /** "engine run time at least 600 s". */
    public Reason said() {
        return Reason.of(DriveReason.LIMITED, quantity, limits());
    }

    private Reason limits() {
        if (min.isPresent() && max.isPresent()) {
            return Reason.of(DriveReason.FROM_TO, amount(min.getAsDouble()), amount(max.getAsDouble()));
        }
        return min.isPresent()
                ? Reason.of(DriveReason.AT_LEAST, amount(min.getAsDouble()))
                : Reason.of(DriveReason.AT_MOST, amount(max.getAsDouble()));
    }
}
