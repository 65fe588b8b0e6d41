package dev.stayfixed.simulator;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * A drive to be driven.
 *
 * @param start engine start
 * @param ambient °C
 * @param barometer kPa
 * @param fuel fuel level at the start, per cent
 * @param legs in order, from standstill to standstill
 */
public record DrivePlan(Instant start, int ambient, int barometer, double fuel, List<Leg> legs) {

    /**
     * One stretch: get to a speed and hold it.
     *
     * @param speed km/h; 0 is idling
     * @param seconds for the whole stretch, speeding up or slowing down included
     */
    public record Leg(int speed, int seconds) {}

    public DrivePlan {
        legs = List.copyOf(legs);
    }

    /** Mild weather near sea level, half a tank; add legs with {@link #idle} and {@link #at}. */
    public static DrivePlan at(Instant start) {
        return new DrivePlan(start, 18, 100, 55, List.of());
    }

    public DrivePlan idle(int seconds) {
        return at(0, seconds);
    }

    public DrivePlan at(int speed, int seconds) {
        List<Leg> more = new ArrayList<>(legs);
        more.add(new Leg(speed, seconds));
        return new DrivePlan(start, ambient, barometer, fuel, more);
    }

    public DrivePlan weather(int newAmbient, int newBarometer) {
        return new DrivePlan(start, newAmbient, newBarometer, fuel, legs);
    }

    public DrivePlan fuel(double level) {
        return new DrivePlan(start, ambient, barometer, level, legs);
    }

    /** Town: 50 km/h from light to light. */
    public DrivePlan town(int times) {
        DrivePlan plan = this;
        for (int i = 0; i < times; i++) {
            plan = plan.at(50, 55).idle(20);
        }
        return plan;
    }

    /** Around the block: too short for most monitors. */
    public static DrivePlan shortHop(Instant start) {
        return at(start).idle(20).town(3);
    }

    /** Town, a country road, town: the minimum-conditions cycle with a warm engine at the end. */
    public static DrivePlan commute(Instant start) {
        return at(start)
                .idle(60)
                .town(4)
                .at(80, 420)
                .at(30, 15)
                .at(90, 300)
                .town(2)
                .idle(45);
    }

    /** Forty minutes with a long cruise: every monitor that the start allows gets its chance. */
    public static DrivePlan longDrive(Instant start) {
        return at(start)
                .idle(90)
                .town(5)
                .at(70, 300)
                .at(25, 20)
                .at(100, 900)
                .at(30, 25)
                .at(85, 420)
                .town(3)
                .idle(60);
    }

    /** Engine on in the yard. */
    public static DrivePlan idleOnly(Instant start) {
        return at(start).idle(240);
    }

    public int seconds() {
        return legs.stream().mapToInt(Leg::seconds).sum();
    }

    public Instant end() {
        return start.plusSeconds(seconds());
    }
}
