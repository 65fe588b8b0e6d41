package dev.stayfixed.simulator;

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
}
