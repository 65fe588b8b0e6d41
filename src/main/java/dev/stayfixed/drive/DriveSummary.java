package dev.stayfixed.drive;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of a drive in numbers; anything may be missing.
 *
 * @param values by quantity, in the quantity's unit
 * @param operatingPoints steady moments of the drive, to be held against a freeze frame
 * @param milOn whether the driver saw the MIL lit with the engine running
 */
public record DriveSummary(
        Map<DriveQuantity, Double> values, List<OperatingPoint> operatingPoints, Optional<Boolean> milOn) {

    public static final DriveSummary UNKNOWN = new DriveSummary(Map.of(), List.of(), Optional.empty());

    public DriveSummary {
        values.forEach(DriveSummary::check);
        values = Map.copyOf(values);
        operatingPoints = List.copyOf(operatingPoints);
        checkTogether(values);
    }

    public OptionalDouble value(DriveQuantity quantity) {
        Double value = values.get(quantity);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** The same summary, with quantities that it lacks taken from elsewhere. */
    public DriveSummary completedBy(Map<DriveQuantity, Double> others) {
        Map<DriveQuantity, Double> all = new EnumMap<>(DriveQuantity.class);
        all.putAll(others);
        all.putAll(values);
        return new DriveSummary(all, operatingPoints, milOn);
    }

    private static void check(DriveQuantity quantity, double value) {
        if (!quantity.isPlausible(value)) {
            throw new IllegalArgumentException("%s: found %s, expected %s to %s %s"
                    .formatted(quantity.words(), value, quantity.lowest(), quantity.highest(), quantity.unit()));
        }
    }

    private static void checkTogether(Map<DriveQuantity, Double> values) {
        Double start = values.get(DriveQuantity.START_COOLANT);
        Double peak = values.get(DriveQuantity.PEAK_COOLANT);
        if (start != null && peak != null && peak < start) {
            throw new IllegalArgumentException(
                    "highest coolant temperature: found %s °C, expected at least the %s °C at engine start"
                            .formatted(peak, start));
        }
        Double run = values.get(DriveQuantity.RUN_TIME);
        for (DriveQuantity part : List.of(DriveQuantity.FAST_TIME, DriveQuantity.LONGEST_IDLE)) {
            Double time = values.get(part);
            if (run != null && time != null && time > run) {
                throw new IllegalArgumentException("%s: found %s s, expected at most the engine run time of %s s"
                        .formatted(part.words(), time, run));
            }
        }
    }
}
