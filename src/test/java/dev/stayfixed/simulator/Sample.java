package dev.stayfixed.simulator;

import java.util.List;

/**
 * One second of a drive, rounded as the car reports it.
 *
 * @param second engine run time, s
 * @param speed km/h
 * @param rpm engine speed
 * @param load calculated load, per cent
 * @param coolant °C
 * @param intakeAir °C
 * @param throttle per cent
 * @param distance km since the start of the drive
 */
public record Sample(
        int second, int speed, int rpm, double load, int coolant, int intakeAir, double throttle, double distance) {

    /**
     * Similar conditions, 13 CCR 1968.2 (c): engine speed within 375 rpm, load within 20 per cent, same warm-up status. The warm-up
     * status changes at 70 °C here (from memory: makers state their own).
     */
    boolean isSimilarTo(Sample stored) {
        return Math.abs(rpm - stored.rpm) <= 375
                && Math.abs(load - stored.load) <= 0.2 * stored.load
                && coolant >= 70 == stored.coolant >= 70;
    }

    /** The same drive with a thermostat that does not close: the coolant rises by 0.62 of what it would. */
    static List<Sample> warmingSlowly(List<Sample> samples) {
        int cold = samples.get(0).coolant();
        return samples.stream()
                .map(s -> new Sample(
                        s.second,
                        s.speed,
                        s.rpm,
                        s.load,
                        (int) Math.round(cold + 0.62 * (s.coolant - cold)),
                        s.intakeAir,
                        s.throttle,
                        s.distance))
                .toList();
    }
}
