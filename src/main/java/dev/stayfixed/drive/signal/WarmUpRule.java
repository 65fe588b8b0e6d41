package dev.stayfixed.drive.signal;

/**
 * When the coolant has made a warm-up cycle: it rose by so much since the first value and reached so much, both inclusive. 13 CCR
 * 1968.2 (c) states it in °F; whole-degree sensors make the rounded forms differ by one drive in a few.
 */
public enum WarmUpRule {
    /** 40 °F (22.22 K) and 160 °F (71.11 °C): with whole degrees, 23 K and 72 °C. */
    SPARK_EXACT(200 / 9.0, 640 / 9.0),
    /** 22 K and 70 °C, the rounded limits told of SAE J1979 PID $30 (from memory). */
    SPARK_ROUNDED(22, 70),
    /** 40 °F and 140 °F (60 °C), compression ignition (from memory). */
    COMPRESSION_EXACT(200 / 9.0, 60);

    private final double rise;
    private final double reach;

    WarmUpRule(double rise, double reach) {
        this.rise = rise;
        this.reach = reach;
    }

    /** Limits that were converted from another unit may be off by the last binary digit. */
    boolean isMetBy(double first, double now) {
        return now >= reach - Tolerance.ROUNDING && now - first >= rise - Tolerance.ROUNDING;
    }
}
