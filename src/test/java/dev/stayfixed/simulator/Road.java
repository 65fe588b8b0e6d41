package dev.stayfixed.simulator;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Turns a plan into one sample a second: speed by a driver with limited acceleration, engine speed by gear, load by road resistance,
 * coolant as a first-order system behind a thermostat. All constants are plausible ones, common practice, no source.
 */
final class Road {

    private static final double[] KMH_PER_1000_RPM = {8, 14, 21, 29, 38};
    private static final double SPEEDING_UP = 5.0;
    private static final double SLOWING_DOWN = 6.0;

    private final SplittableRandom random;
    private final Start start;
    private final List<Sample> samples = new ArrayList<>();
    private double speed;
    private double coolant;
    private double distance;

    private Road(Start start, long seed) {
        this.start = start;
        this.random = new SplittableRandom(seed);
        this.coolant = start.coolant();
    }

    static List<Sample> drive(DrivePlan plan, Start start, long seed) {
        Road road = new Road(start, seed);
        for (DrivePlan.Leg leg : plan.legs()) {
            for (int i = 0; i < leg.seconds(); i++) {
                road.second(leg.speed());
            }
        }
        return road.samples;
    }

    private void second(int wanted) {
        double before = speed;
        double aim = wanted == 0 ? 0 : Math.max(0, wanted + 2 * random.nextDouble() - 1);
        double step = Math.max(-SLOWING_DOWN, Math.min(SPEEDING_UP, aim - speed));
        speed = Math.max(0, speed + (Math.abs(aim - speed) < 3 ? 0.3 * step : step));
        if (wanted == 0 && speed < 2) {
            speed = 0;
        }
        double acceleration = speed - before;
        distance += (speed + before) / 2 / 3600;
        warm();
        double load = load(acceleration);
        samples.add(new Sample(
                samples.size() + 1,
                (int) Math.round(speed),
                rpm(acceleration),
                Math.round(load * 10) / 10.0,
                (int) Math.floor(coolant),
                start.ambient() + 6,
                Math.round(throttle(load, acceleration) * 10) / 10.0,
                distance));
    }

    /** Heats towards 105 °C, the quicker the harder the engine works; the thermostat holds it at 90 °C. */
    private void warm() {
        double timeConstant = speed > 20 ? 330 : 620;
        coolant += (105 - coolant) / timeConstant;
        if (coolant > 90) {
            coolant = 90 + random.nextDouble() * 0.9;
        }
    }

    private int rpm(double acceleration) {
        double idle = coolant < 60 ? 750 + (60 - coolant) * 7 : 750;
        double shiftDown = acceleration > 2 ? 2000 : 1500;
        for (int gear = KMH_PER_1000_RPM.length - 1; gear >= 0; gear--) {
            double inGear = speed / KMH_PER_1000_RPM[gear] * 1000;
            if (inGear >= shiftDown || (gear == 0 && inGear > idle)) {
                return (int) Math.round(inGear);
            }
        }
        return (int) Math.round(idle + random.nextDouble() * 30 - 15);
    }

    private double load(double acceleration) {
        if (speed < 1) {
            return 22 + (coolant < 60 ? 8 : 0) + random.nextDouble();
        }
        if (acceleration < -1) {
            return 6 + random.nextDouble();
        }
        double road = 18 + speed * speed / 450 + 9 * Math.max(0, acceleration);
        return Math.min(98, road + 2 * random.nextDouble());
    }

    private double throttle(double load, double acceleration) {
        return speed >= 1 && acceleration < -1 ? 2.0 : 8 + load * 0.35;
    }
}
