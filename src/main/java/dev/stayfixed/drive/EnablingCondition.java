package dev.stayfixed.drive;

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
            return Finding.unknown(quantity.words() + " was not recorded; needed " + limits());
        }
        double value = found.getAsDouble();
        String facts =
                "%s %s %s, needed %s".formatted(quantity.words(), DriveFacts.number(value), quantity.unit(), limits());
        OptionalDouble most = summary.atMost(quantity);
        if (most.isPresent() && isOpen(value, most.getAsDouble())) {
            return Finding.unknown(
                    "%s at least %s %s, needed %s: it may have been up to %s %s, in time that was not recorded"
                            .formatted(
                                    quantity.words(),
                                    DriveFacts.number(value),
                                    quantity.unit(),
                                    limits(),
                                    DriveFacts.number(most.getAsDouble()),
                                    quantity.unit()));
        }
        if (min.isPresent() && value < min.getAsDouble()) {
            return Finding.no(facts + ": " + DriveFacts.number(min.getAsDouble() - value) + " "
                    + quantity.differenceUnit() + " short");
        }
        if (max.isPresent() && value > max.getAsDouble()) {
            return Finding.no(facts + ": " + DriveFacts.number(value - max.getAsDouble()) + " "
                    + quantity.differenceUnit() + " over");
        }
        return Finding.yes(facts);
    }

    /** Whether a value between these two may lie on either side of a limit. */
    private boolean isOpen(double least, double most) {
        boolean low = min.isPresent() && least < min.getAsDouble() && most >= min.getAsDouble();
        boolean high = max.isPresent() && least <= max.getAsDouble() && most > max.getAsDouble();
        return low || high;
    }

    /** "engine run time at least 600 s". */
    public String words() {
        return quantity.words() + " " + limits();
    }

    private String limits() {
        String unit = " " + quantity.unit();
        if (min.isPresent() && max.isPresent()) {
            return DriveFacts.number(min.getAsDouble()) + " to " + DriveFacts.number(max.getAsDouble()) + unit;
        }
        return min.isPresent()
                ? "at least " + DriveFacts.number(min.getAsDouble()) + unit
                : "at most " + DriveFacts.number(max.getAsDouble()) + unit;
    }
}
