package dev.stayfixed.drive;

import dev.stayfixed.obd.Ignition;

/**
 * The thresholds by which a drive is read. Sources print some of them rounded or differently, so they are data; all limits are
 * inclusive.
 *
 * @param warmUpRise K; 40 °F as a difference is 22.2 K
 * @param warmUpReachSpark °C; 160 °F is 71.1 °C
 * @param warmUpReachCompression °C; 140 °F is 60 °C
 * @param fastSpeed km/h; 25 mph is 40.23 km/h
 * @param idleSpeed km/h; 1 mph is 1.61 km/h
 * @param runningSpeed rpm at which the engine counts as running
 * @param minimumRunTime s, for the minimum-conditions cycle
 * @param minimumFastTime s
 * @param minimumIdle s, unbroken
 * @param lowestAmbient °C, general denominator; 20 °F is -6.7 °C
 * @param highestAltitude m, general denominator; 8000 ft is 2438.4 m
 */
public record DriveRules(
        double warmUpRise,
        double warmUpReachSpark,
        double warmUpReachCompression,
        double fastSpeed,
        double idleSpeed,
        double runningSpeed,
        double minimumRunTime,
        double minimumFastTime,
        double minimumIdle,
        double lowestAmbient,
        double highestAltitude) {

    /** For sensors of whole degrees and whole km/h: rise 22 K, reach 71 °C (diesel 60 °C), 40 km/h, 1 km/h. */
    public static final DriveRules WHOLE_DEGREES =
            new DriveRules(22, 71, 60, 40, 1.61, 400, 600, 300, 30, -6.67, 2438.4);

    /** The Fahrenheit and mile limits of the regulation, converted exactly. */
    public static final DriveRules EXACT =
            new DriveRules(200 / 9.0, 640 / 9.0, 60, 40.2336, 1.609344, 400, 600, 300, 30, -60 / 9.0, 2438.4);

    public double warmUpReach(Ignition ignition) {
        return ignition == Ignition.SPARK ? warmUpReachSpark : warmUpReachCompression;
    }
}
