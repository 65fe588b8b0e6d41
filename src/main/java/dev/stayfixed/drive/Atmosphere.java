package dev.stayfixed.drive;

/**
 * Barometric pressure and altitude in the US Standard Atmosphere 1976, below 11 km: p = 101.325 (1 - 0.0065 h / 288.15)^5.25588 kPa,
 * h in geopotential metres. Weather moves the reading by about 3 kPa, or 1000 ft, so this is an estimate.
 */
public final class Atmosphere {

    private static final double SEA_LEVEL_KPA = 101.325;
    private static final double LAPSE_PER_METRE = 0.0065 / 288.15;
    private static final double EXPONENT = 9.80665 * 0.0289644 / (8.31432 * 0.0065);

    private Atmosphere() {}

    /** Pressure in kPa at an altitude in metres. */
    public static double pressureAt(double metres) {
        return SEA_LEVEL_KPA * Math.pow(1 - LAPSE_PER_METRE * metres, EXPONENT);
    }

    /** Altitude in metres at a pressure in kPa. */
    public static double altitudeAt(double kilopascals) {
        return (1 - Math.pow(kilopascals / SEA_LEVEL_KPA, 1 / EXPONENT)) / LAPSE_PER_METRE;
    }
}
