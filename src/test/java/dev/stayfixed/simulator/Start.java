package dev.stayfixed.simulator;

/**
 * How a drive began.
 *
 * @param soakHours engine-off time before it
 * @param coolant °C
 * @param ambient °C
 * @param barometer kPa
 * @param fuel fuel level, per cent
 */
public record Start(double soakHours, int coolant, int ambient, int barometer, double fuel) {

    /** A cold start as the evaporative monitors want it (typical figures): long soak, mild weather, coolant near ambient. */
    boolean isColdSoaked(double hours) {
        return soakHours >= hours && ambient >= 5 && ambient <= 35 && coolant <= 35 && coolant - ambient <= 6;
    }

    boolean isFuelInside(double low, double high) {
        return fuel >= low && fuel <= high;
    }
}
