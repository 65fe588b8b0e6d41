package dev.stayfixed.simulator;

/** What the present driving cycle amounts to so far. */
final class DriveTally {

    private int firstCoolant = Integer.MAX_VALUE;
    private int peakCoolant = Integer.MIN_VALUE;
    private int runTime;
    private int fastTime;
    private int idle;
    private int longestIdle;
    private double distance;

    void add(Sample now) {
        if (runTime == 0) {
            firstCoolant = now.coolant();
        }
        runTime++;
        peakCoolant = Math.max(peakCoolant, now.coolant());
        fastTime += now.speed() >= 40 ? 1 : 0;
        idle = now.speed() <= 1 ? idle + 1 : 0;
        longestIdle = Math.max(longestIdle, idle);
        distance = now.distance();
    }

    /** Rise of 40 °F to 160 °F (diesel 140 °F), on whole degrees: 22 K to 71 °C (60 °C). */
    boolean isWarmUp(Combustion combustion) {
        int reach = combustion == Combustion.SPARK ? 71 : 60;
        return runTime > 0 && peakCoolant >= reach && peakCoolant - firstCoolant >= 22;
    }

    /** 600 s, 300 s of it at 25 mph (40 km/h) or more, 30 s of unbroken idle: 13 CCR 1968.2 (d)(2.5.2), SAE J1699-3. */
    boolean isMinimumCycle() {
        return runTime >= 600 && fastTime >= 300 && longestIdle >= 30;
    }

    Summary summary(Start start) {
        return new Summary(
                runTime == 0 ? start.coolant() : firstCoolant,
                runTime == 0 ? start.coolant() : peakCoolant,
                runTime,
                fastTime,
                longestIdle,
                start.ambient(),
                start.barometer(),
                Math.round(start.fuel() * 10) / 10.0,
                Math.round(start.soakHours() * 100) / 100.0,
                Math.round(distance * 100) / 100.0);
    }
}
