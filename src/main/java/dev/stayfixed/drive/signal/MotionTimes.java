package dev.stayfixed.drive.signal;

import dev.stayfixed.drive.DriveRules;
import java.util.OptionalLong;

/**
 * How long the engine ran, the car moved fast, idled and stood; all times in ms, all within recorded time.
 *
 * @param running engine speed at or above the rule's running speed
 * @param fast at or above 25 mph
 * @param longestIdle unbroken, the engine running and the car at or below 1 mph
 * @param longestIdleReleased the same with the pedal released; empty where nobody said which pedal value that is
 * @param longestStandstill unbroken, at or below 1 mph, the engine running or not
 */
public record MotionTimes(
        long running, long fast, long longestIdle, OptionalLong longestIdleReleased, long longestStandstill) {

    public boolean runsLongEnough(DriveRules rules) {
        return running >= rules.minimumRunTime() * 1000;
    }

    public boolean isFastLongEnough(DriveRules rules) {
        return fast >= rules.minimumFastTime() * 1000;
    }

    public boolean idlesLongEnough(DriveRules rules) {
        return longestIdle >= rules.minimumIdle() * 1000;
    }

    /** Run time, time at speed and unbroken idle, all in this drive: the minimum-conditions cycle of 13 CCR 1968.2 (d). */
    public boolean isMinimumCycle(DriveRules rules) {
        return runsLongEnough(rules) && isFastLongEnough(rules) && idlesLongEnough(rules);
    }
}
