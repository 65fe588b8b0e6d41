package dev.stayfixed.drive.signal;

import dev.stayfixed.drive.DriveRules;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** Adds up the times and the distance of {@link MotionTimes} step by step. */
final class MotionMeter {

    private static final double MILLIS_PER_HOUR = 3_600_000;

    private final DriveRules rules;
    private final OptionalDouble released;
    private final Stretch idle = new Stretch();
    private final Stretch idleReleased = new Stretch();
    private final Stretch standstill = new Stretch();
    private final Stretch possibleIdle = new Stretch();
    private long running;
    private long unrecorded;
    private long fast;
    private double speedTime;
    private double meanSpeedTime;

    MotionMeter(DriveRules rules, OptionalDouble released) {
        this.rules = rules;
        this.released = released;
    }

    /** Nothing is known of this time: it ends every unbroken time. The engine may have run in it, unless it was off before and after. */
    void gap(long millis, Timeline held, SignalRow next) {
        idle.end();
        idleReleased.end();
        standstill.end();
        double before = held.valueOrNaN(Signal.ENGINE_SPEED);
        boolean off =
                before < rules.runningSpeed() && next.value(Signal.ENGINE_SPEED).orElse(0) < rules.runningSpeed();
        unrecorded += off ? 0 : millis;
        possibleIdle.add(!off, millis);
    }

    /** @param nextSpeed the speed that the row at the end of the step gives or keeps; NaN where unknown */
    void count(long millis, Timeline held, double nextSpeed) {
        double speed = held.valueOrNaN(Signal.VEHICLE_SPEED);
        boolean runs = held.valueOrNaN(Signal.ENGINE_SPEED) >= rules.runningSpeed();
        boolean stands = speed <= rules.idleSpeed() + Tolerance.ROUNDING;
        if (runs) {
            running += millis;
        }
        if (speed >= rules.fastSpeed() - Tolerance.ROUNDING) {
            fast += millis;
        }
        if (!Double.isNaN(speed)) {
            speedTime += speed * millis;
            meanSpeedTime += (speed + nextSpeed) / 2 * millis;
        }
        standstill.add(stands, millis);
        idle.add(stands && runs, millis);
        possibleIdle.add(stands && runs, millis);
        idleReleased.add(stands && runs && isReleased(held.valueOrNaN(Signal.PEDAL)), millis);
    }

    private boolean isReleased(double pedal) {
        return released.isPresent() && pedal <= released.getAsDouble() + Tolerance.ROUNDING;
    }

    /** km, each speed held until the next row. */
    double distance() {
        return speedTime / MILLIS_PER_HOUR;
    }

    /** km, by the mean of the speeds at both ends of each step. */
    double trapezoidDistance() {
        return meanSpeedTime / MILLIS_PER_HOUR;
    }

    /** ms without rows in which the engine may have run. */
    long unrecorded() {
        return unrecorded;
    }

    /** The longest idle, ms, if the car idled through all of that time. */
    long longestPossibleIdle() {
        return possibleIdle.longest();
    }

    MotionTimes times() {
        return new MotionTimes(
                running,
                fast,
                idle.longest(),
                released.isPresent() ? OptionalLong.of(idleReleased.longest()) : OptionalLong.empty(),
                standstill.longest());
    }
}
