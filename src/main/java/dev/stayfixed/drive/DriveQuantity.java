package dev.stayfixed.drive;

import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Unit;

/** What a summary of a drive can state, each with its unit and the range in which a real drive can lie (both ends inclusive). */
public enum DriveQuantity implements Kind {
    START_COOLANT("coolant temperature at engine start", Unit.CELSIUS, -50, 150),
    PEAK_COOLANT("highest coolant temperature", Unit.CELSIUS, -50, 215),
    RUN_TIME("engine run time", Unit.SECOND, 0, 345_600),
    FAST_TIME("time at 25 mph (40 km/h) or more", Unit.SECOND, 0, 345_600),
    LONGEST_IDLE("longest unbroken idle", Unit.SECOND, 0, 345_600),
    AMBIENT("ambient temperature", Unit.CELSIUS, -60, 70),
    BAROMETER("barometric pressure", Unit.KILOPASCAL, 45, 110),
    FUEL_LEVEL("fuel level", Unit.PERCENT, 0, 100),
    SOAK("engine-off time before the start", Unit.HOUR, 0, 8_784),
    DISTANCE("distance", Unit.KILOMETRE, 0, 5_000);

    private final String words;
    private final Unit unit;
    private final double lowest;
    private final double highest;

    DriveQuantity(String words, Unit unit, double lowest, double highest) {
        this.words = words;
        this.unit = unit;
        this.lowest = lowest;
        this.highest = highest;
    }

    public String words() {
        return words;
    }

    public String unit() {
        return unit.symbol();
    }

    public Unit measure() {
        return unit;
    }

    public double lowest() {
        return lowest;
    }

    public double highest() {
        return highest;
    }

    /** Whether a real drive can have this value; false for NaN and the infinities. */
    public boolean isPlausible(double value) {
        return value >= lowest && value <= highest;
    }
}
