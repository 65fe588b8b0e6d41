package dev.stayfixed.web.pages;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.jobs.ShopSettings;

/**
 * The unit in which people read and type a quantity: shown = kept * factor + offset.
 *
 * @param unit as it is printed
 */
record Scale(String unit, double factor, double offset) {

    static Scale of(DriveQuantity quantity, ShopSettings.Units units) {
        boolean us = units == ShopSettings.Units.US;
        return switch (quantity) {
            case START_COOLANT, PEAK_COOLANT, AMBIENT -> us ? new Scale("°F", 1.8, 32) : new Scale("°C", 1, 0);
            case RUN_TIME, FAST_TIME -> new Scale("min", 1 / 60.0, 0);
            case LONGEST_IDLE -> new Scale("s", 1, 0);
            // 1 kPa is 0.2953 inHg at 0 °C (NIST SP 811, appendix B.8: 1 inHg = 3.386389 kPa).
            case BAROMETER -> us ? new Scale("inHg", 1 / 3.386389, 0) : new Scale("kPa", 1, 0);
            case FUEL_LEVEL -> new Scale("%", 1, 0);
            case SOAK -> new Scale("h", 1, 0);
            case DISTANCE -> us ? new Scale("mi", 1 / 1.609344, 0) : new Scale("km", 1, 0);
        };
    }

    /** Speeds and temperatures of a log; all other signals are shown as they are kept. */
    static Scale of(Signal signal, ShopSettings.Units units) {
        if (units == ShopSettings.Units.US && signal.unit().equals("km/h")) {
            return new Scale("mph", 1 / 1.609344, 0);
        }
        return units == ShopSettings.Units.US && signal.unit().equals("°C")
                ? new Scale("°F", 1.8, 32)
                : new Scale(signal.unit(), 1, 0);
    }

    double shown(double kept) {
        return kept * factor + offset;
    }

    /** The inverse of {@link #shown}, rounded to a millionth so that 212 °F is 100 °C. */
    double kept(double shown) {
        return Math.rint((shown - offset) / factor * 1e6) / 1e6;
    }
}
