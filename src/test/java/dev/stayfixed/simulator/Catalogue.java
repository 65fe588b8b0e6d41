package dev.stayfixed.simulator;

import static dev.stayfixed.simulator.MonitoredCode.plain;
import static dev.stayfixed.simulator.MonitoredCode.similar;
import static dev.stayfixed.simulator.MonitoredCode.tracked;

import dev.stayfixed.simulator.MonitoredCode.Record06;
import java.util.List;

/** The codes that the simulated cars watch. Enabling figures: common practice, no source. */
final class Catalogue {

    private static final Enabling FIRST_REVOLUTIONS = Enabling.anyStart(90, s -> s.rpm() >= 500 && s.coolant() > -10);
    private static final Enabling WARM_PULL = Enabling.anyStart(40, s -> s.coolant() >= 70 && s.speed() >= 45);
    private static final Enabling CLOSED_LOOP = Enabling.anyStart(60, s -> s.coolant() >= 50);
    private static final Enabling KEY_ON = Enabling.anyStart(5, s -> true);
    private static final Enabling COAST =
            Enabling.anyStart(6, s -> s.coolant() >= 70 && s.speed() >= 30 && s.throttle() < 5);
    private static final Enabling CRUISE = Enabling.steady(
            60, s -> s.coolant() >= 75 && s.second() >= 400 && s.speed() >= 55 && s.speed() <= 115 && s.rpm() <= 3200);
    private static final Enabling ROLLING = Enabling.steady(40, s -> s.coolant() >= 70 && s.speed() >= 40);

    static final List<MonitoredCode> SPARK = List.of(
            tracked(
                    "P0420",
                    Group.CATALYST,
                    CRUISE,
                    new Record06(0x21, 0x84, 0x20, 0, 0xC0),
                    "P0135",
                    "P0141",
                    "P0302"),
            tracked("P0442", Group.EVAP, evap(6, 120), new Record06(0x3B, 0x80, 0x17, 0, 0x0190)),
            tracked("P0456", Group.EVAP, evap(8, 240), new Record06(0x3C, 0x81, 0x17, 0, 0x012C)),
            tracked("P0133", Group.O2_SENSOR, ROLLING, new Record06(0x01, 0x05, 0x10, 0, 100), "P0135"),
            plain("P0135", Group.O2_HEATER, 2, heater(), new Record06(0x41, 0x81, 0x13, 1500, 15000)),
            plain("P0141", Group.O2_HEATER, 2, heater(), new Record06(0x42, 0x81, 0x13, 1500, 15000)),
            similar("P0302", Group.MISFIRE, FIRST_REVOLUTIONS, WARM_PULL, new Record06(0xA3, 0x0C, 0x24, 0, 60)),
            similar("P0171", Group.FUEL_SYSTEM, CLOSED_LOOP, WARM_PULL, new Record06(0x81, 0x82, 0x30, 0x2000, 0xE000)),
            plain("P0102", Group.COMPONENTS, 1, KEY_ON, Record06.NONE),
            plain("P0340", Group.COMPONENTS, 2, KEY_ON, Record06.NONE),
            plain("P0128", Group.COMPONENTS, 2, thermostat(), Record06.NONE),
            tracked("P0401", Group.EGR_VVT, COAST, new Record06(0x31, 0x80, 0x05, 2000, 0xFFFF)),
            tracked("P0011", Group.EGR_VVT, ROLLING, new Record06(0x35, 0x81, 0x9D, 0, 0x0400)));

    static final List<MonitoredCode> COMPRESSION = List.of(
            tracked("P0420", Group.NMHC_CATALYST, CRUISE, new Record06(0x21, 0x84, 0x20, 0x30, 0xFFFF)),
            tracked("P20EE", Group.NOX, CRUISE, new Record06(0x98, 0x81, 0x30, 0x2000, 0xFFFF)),
            tracked("P0299", Group.BOOST, COAST, new Record06(0x85, 0x80, 0x17, 1000, 0xFFFF)),
            tracked("P2A00", Group.EXHAUST_SENSOR, ROLLING, new Record06(0x01, 0x05, 0x10, 0, 300)),
            tracked("P2002", Group.PM_FILTER, CRUISE, new Record06(0xB0, 0x80, 0x17, 50, 5000)),
            tracked("P0401", Group.EGR_VVT, ROLLING, new Record06(0x31, 0x80, 0x05, 2000, 0xFFFF)),
            similar("P0302", Group.MISFIRE, FIRST_REVOLUTIONS, WARM_PULL, new Record06(0xA3, 0x0C, 0x24, 0, 60)),
            plain("P0093", Group.FUEL_SYSTEM, 2, CLOSED_LOOP, Record06.NONE),
            plain("P0102", Group.COMPONENTS, 1, KEY_ON, Record06.NONE),
            plain("P0340", Group.COMPONENTS, 2, KEY_ON, Record06.NONE));

    private Catalogue() {}

    static List<MonitoredCode> of(Combustion combustion) {
        return combustion == Combustion.SPARK ? SPARK : COMPRESSION;
    }

    private static Enabling evap(double soakHours, int seconds) {
        return Enabling.anyStart(seconds, s -> s.second() >= 600 && s.speed() >= 40 && s.speed() <= 115)
                .after(s -> s.isColdSoaked(soakHours) && s.isFuelInside(15, 85) && s.barometer() >= 75);
    }

    private static Enabling heater() {
        return Enabling.anyStart(75, s -> true).after(s -> s.coolant() < 50);
    }

    private static Enabling thermostat() {
        return Enabling.anyStart(420, s -> s.speed() >= 40).after(s -> s.coolant() < 45);
    }
}
