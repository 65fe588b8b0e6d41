package dev.stayfixed.drive.signal;

import dev.stayfixed.drive.DriveRules;

/** Rules for drives whose speed and temperature are read from a log. */
public final class SignalRules {

    /**
     * The limits of 13 CCR 1968.2 converted without rounding: 25 mph, 1 mph, 40 °F, 160 °F, 140 °F, 20 °F; 8000 ft is 75.26 kPa in
     * the US Standard Atmosphere 1976.
     */
    public static final DriveRules EXACT =
            new DriveRules(200 / 9.0, 640 / 9.0, 60, 25 * 1.609344, 1.609344, 400, 600, 300, 30, -20 / 3.0, 75.26);

    private SignalRules() {}
}
