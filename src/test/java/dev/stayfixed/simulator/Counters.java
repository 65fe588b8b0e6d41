package dev.stayfixed.simulator;

/** SAE J1979 PIDs $1F, $21, $30, $31, $4D, $4E and $A6, each with its limit and what resets it. */
final class Counters {

    private double odometerKm;
    private double kmSinceClear;
    private double kmWithMil;
    private long secondsSinceClear;
    private long secondsWithMil;
    private int runTime;
    private int warmUps;
    private int warmUpsWithoutMil;

    Counters(double odometerKm) {
        this.odometerKm = odometerKm;
    }

    void keyOn() {
        runTime = 0;
    }

    void second(double km, boolean mil) {
        runTime++;
        odometerKm += km;
        kmSinceClear += km;
        secondsSinceClear++;
        if (mil) {
            kmWithMil += km;
            secondsWithMil++;
        }
    }

    /** $21 and $4D start anew when the MIL comes on. */
    void milTurnsOn() {
        kmWithMil = 0;
        secondsWithMil = 0;
        warmUpsWithoutMil = 0;
    }

    void warmUpReached(boolean mil) {
        warmUps++;
        warmUpsWithoutMil = mil ? 0 : warmUpsWithoutMil + 1;
        if (warmUpsWithoutMil >= CodeState.WARM_UPS_TO_ERASE) {
            kmWithMil = 0;
            secondsWithMil = 0;
        }
    }

    /** Service $04 and a lost battery; the odometer stays. */
    void clear() {
        kmSinceClear = 0;
        kmWithMil = 0;
        secondsSinceClear = 0;
        secondsWithMil = 0;
        warmUps = 0;
        warmUpsWithoutMil = 0;
    }

    int runTime() {
        return Math.min(0xFFFF, runTime);
    }

    int warmUps() {
        return Math.min(0xFF, warmUps);
    }

    int kmSinceClear() {
        return (int) Math.min(0xFFFF, kmSinceClear);
    }

    int kmWithMil() {
        return (int) Math.min(0xFFFF, kmWithMil);
    }

    int minutesSinceClear() {
        return (int) Math.min(0xFFFF, secondsSinceClear / 60);
    }

    int minutesWithMil() {
        return (int) Math.min(0xFFFF, secondsWithMil / 60);
    }

    /** 0.1 km. */
    long odometer() {
        return (long) (odometerKm * 10);
    }
}
