package dev.stayfixed.drive.signal;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRules;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.OperatingPoint;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What happened in a recorded drive. Every time is in ms, counted from the first row where it is a moment.
 *
 * @param unrecorded ms of gaps in which the engine may have run: the times are the least then, not what they were
 * @param longestPossibleIdle ms, if the car idled through all of them
 * @param engineStart the first row at which the engine ran
 * @param distance km, each speed held until the next row; empty without a vehicle speed
 * @param trapezoidDistance km, by the mean speed of each step
 * @param extents of each signal that was recorded
 * @param warmUps when the coolant completed a warm-up cycle, by each rule that it met
 * @param minimumCycleAt when run time, time at speed and idle had all been reached
 * @param milOn whether the MIL was lit with the engine running; empty where that was not recorded
 */
public record SignalFacts(
        RowTimes rows,
        MotionTimes times,
        long unrecorded,
        long longestPossibleIdle,
        OptionalLong engineStart,
        OptionalDouble distance,
        OptionalDouble trapezoidDistance,
        Map<Signal, Extent> extents,
        Map<WarmUpRule, Long> warmUps,
        OptionalLong minimumCycleAt,
        List<OperatingPoint> operatingPoints,
        Optional<Boolean> milOn) {

    public SignalFacts {
        extents = Map.copyOf(extents);
        warmUps = Map.copyOf(warmUps);
        operatingPoints = List.copyOf(operatingPoints);
    }

    /**
     * Starts to measure a drive.
     *
     * @param pedalReleased the highest value (%) of a released accelerator pedal, which differs from car to car; empty where nobody
     *     knows it
     */
    public static SignalMeter meter(DriveRules rules, OptionalDouble pedalReleased) {
        return new SignalMeter(rules, pedalReleased);
    }

    public Optional<Extent> extent(Signal signal) {
        return Optional.ofNullable(extents.get(signal));
    }

    /** Whether the coolant made a warm-up cycle; empty where it was not recorded. */
    public Optional<Boolean> warmUpCycle(WarmUpRule rule) {
        return extent(Signal.COOLANT).map(coolant -> warmUps.containsKey(rule));
    }

    /** The greatest rise of the coolant over its first value, K; never below zero. */
    public OptionalDouble coolantRise() {
        return extent(Signal.COOLANT)
                .map(coolant -> OptionalDouble.of(coolant.highest() - coolant.first()))
                .orElseGet(OptionalDouble::empty);
    }

    /**
     * The drive in numbers. Ambient and barometer are the lowest that were seen, because an exclusion for cold or altitude has to be
     * free of doubt; fuel level is the first. Values that no drive can have are left out. Time at speed and idle are never stated
     * longer than the engine run time. Where rows are so far apart that they count for nothing, the times are the least.
     */
    public DriveSummary summary() {
        Map<DriveQuantity, Double> values = new EnumMap<>(DriveQuantity.class);
        extent(Signal.COOLANT).ifPresent(coolant -> {
            values.put(DriveQuantity.START_COOLANT, coolant.first());
            values.put(DriveQuantity.PEAK_COOLANT, coolant.highest());
        });
        extent(Signal.AMBIENT).ifPresent(ambient -> values.put(DriveQuantity.AMBIENT, ambient.lowest()));
        extent(Signal.BAROMETER).ifPresent(barometer -> values.put(DriveQuantity.BAROMETER, barometer.lowest()));
        extent(Signal.FUEL_LEVEL).ifPresent(fuel -> values.put(DriveQuantity.FUEL_LEVEL, fuel.first()));
        // a sum over the smaller part of a drive is no distance
        if (unrecorded <= rows.counted()) {
            distance.ifPresent(km -> values.put(DriveQuantity.DISTANCE, km));
        }
        Map<DriveQuantity, Double> atMost = putTimes(values);
        values.entrySet().removeIf(entry -> !entry.getKey().isPlausible(entry.getValue()));
        atMost.keySet().retainAll(values.keySet());
        return new DriveSummary(values, operatingPoints, milOn, atMost);
    }

    private Map<DriveQuantity, Double> putTimes(Map<DriveQuantity, Double> values) {
        Map<DriveQuantity, Double> atMost = new EnumMap<>(DriveQuantity.class);
        boolean speed = extents.containsKey(Signal.VEHICLE_SPEED);
        boolean engine = extents.containsKey(Signal.ENGINE_SPEED);
        boolean ran = engineStart.isPresent();
        if (engine) {
            values.put(DriveQuantity.RUN_TIME, times.running() / 1000.0);
            atMost.put(DriveQuantity.RUN_TIME, (times.running() + unrecorded) / 1000.0);
        }
        if (speed) {
            long fast = engine ? Math.min(times.fast(), times.running()) : times.fast();
            values.put(DriveQuantity.FAST_TIME, fast / 1000.0);
            atMost.put(DriveQuantity.FAST_TIME, (fast + unrecorded) / 1000.0);
        }
        if (speed && engine) {
            values.put(DriveQuantity.LONGEST_IDLE, times.longestIdle() / 1000.0);
            atMost.put(DriveQuantity.LONGEST_IDLE, longestPossibleIdle / 1000.0);
        }
        if (unrecorded == 0 || (engine && !ran)) {
            atMost.clear();
        }
        return atMost;
    }
}
