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
 * @param atMost of a quantity that was recorded with gaps, what it may have been: its value is the least then
 */
public record DriveSummary(
        Map<DriveQuantity, Double> values,
        List<OperatingPoint> operatingPoints,
        Optional<Boolean> milOn,
        Map<DriveQuantity, Double> atMost) {

    public static final DriveSummary UNKNOWN = new DriveSummary(Map.of(), List.of(), Optional.empty());

    public DriveSummary {
        values.forEach(DriveSummary::check);
        values = Map.copyOf(values);
        operatingPoints = List.copyOf(operatingPoints);
        atMost = Map.copyOf(atMost);
        checkTogether(values);
    }

    /** A summary without gaps: every value is what it was. */
    public DriveSummary(
            Map<DriveQuantity, Double> values, List<OperatingPoint> operatingPoints, Optional<Boolean> milOn) {
        this(values, operatingPoints, milOn, Map.of());
    }

    public OptionalDouble value(DriveQuantity quantity) {
        Double value = values.get(quantity);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** What a quantity may have been at most, where its value is only the least; empty where it is known. */
    public OptionalDouble atMost(DriveQuantity quantity) {
        Double value = atMost.get(quantity);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** The same quantities with other points and another word on the MIL. */
    public DriveSummary with(List<OperatingPoint> points, Optional<Boolean> mil) {
        return new DriveSummary(values, points, mil, atMost);
    }

    /** The same summary, with quantities that it lacks, or knows only the least of, taken from elsewhere. */
    public DriveSummary completedBy(Map<DriveQuantity, Double> others) {
        Map<DriveQuantity, Double> all = new EnumMap<>(DriveQuantity.class);
        all.putAll(others);
        Map<DriveQuantity, Double> bounds = new EnumMap<>(DriveQuantity.class);
        values.forEach((quantity, value) -> {
            OptionalDouble most = atMost(quantity);
            Double other = others.get(quantity);
            boolean settled = most.isPresent() && other != null && other >= value && other <= most.getAsDouble();
            if (!settled) {
                all.put(quantity, value);
                most.ifPresent(bound -> bounds.put(quantity, bound));
            }
        });
        return new DriveSummary(all, operatingPoints, milOn, bounds);
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
