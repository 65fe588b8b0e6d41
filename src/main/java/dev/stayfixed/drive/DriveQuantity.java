package dev.stayfixed.drive;

/** What a summary of a drive can state, each with its unit and the range in which a real drive can lie (both ends inclusive). */
public enum DriveQuantity {
    START_COOLANT("coolant temperature at engine start", "°C", -50, 150),
    PEAK_COOLANT("highest coolant temperature", "°C", -50, 215),
    RUN_TIME("engine run time", "s", 0, 345_600),
    FAST_TIME("time at 25 mph (40 km/h) or more", "s", 0, 345_600),
    LONGEST_IDLE("longest unbroken idle", "s", 0, 345_600),
    AMBIENT("ambient temperature", "°C", -60, 70),
    BAROMETER("barometric pressure", "kPa", 45, 110),
    FUEL_LEVEL("fuel level", "%", 0, 100),
    SOAK("engine-off time before the start", "h", 0, 8_784),
    DISTANCE("distance", "km", 0, 5_000);

    private final String words;
    private final String unit;
    private final double lowest;
    private final double highest;

    DriveQuantity(String words, String unit, double lowest, double highest) {
        this.words = words;
        this.unit = unit;
        this.lowest = lowest;
        this.highest = highest;
    }

    public String words() {
        return words;
    }

    public String unit() {
        return unit;
    }

    /** The unit of a difference between two values: a temperature is missed by kelvins. */
    public String differenceUnit() {
        return unit.equals("°C") ? "K" : unit;
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
