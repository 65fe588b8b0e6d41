package dev.stayfixed.customer;

import dev.stayfixed.obd.MonitorGroup;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * The parts of which a drive for a monitor is made, in the order in which they are driven. The figures lie inside published ones: fuel
 * level and 10 minutes at 45 to 65 mph for the evaporative system (New York State inspection programme; maker samples of 50 to 75 %
 * fuel), soak of 8 hours (the same), 70 to 120 km/h (a Nissan driving pattern), 26 to 103 km/h for the catalyst (Mazda, 2003), more
 * than 10 minutes of running before the catalyst's idle test (Buick, 2005). Idling after a cold start, coasting in gear, ordinary
 * driving for the continuous monitors: from memory. The vehicle's service information overrides all of it.
 */
enum PartOfDrive {
    FUEL("Before you start, have the fuel tank between half and three quarters full."),
    COLD_START("Start with a cold engine: leave the car parked for 8 hours, best overnight."),
    IDLE_COLD("After the start, stay parked in the open air, in P or neutral, and let the engine idle for 2 minutes."),
    WARM_UP("Drive gently for about 10 minutes, until the engine is warm."),
    STEADY(
            "On an open road, hold a steady 75 to 95 km/h (45 to 60 mph) for 10 minutes without a break, with a calm foot, where that"
                    + " is legal and safe."),
    COAST(
            "Three times, with nobody close behind: take your foot off the pedal and let the car slow down in gear from about 80 to"
                    + " 40 km/h (50 to 25 mph). Brake whenever traffic asks for it."),
    ORDINARY("Then drive for 10 minutes as you do every day, smoothly, with a few full stops."),
    IDLE_WARM("Park in the open air, in P or neutral, and let the engine idle for 2 minutes before you switch it off.");

    private final String words;

    PartOfDrive(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    static Set<PartOfDrive> of(MonitorGroup group) {
        return switch (group) {
            case CATALYST, HEATED_CATALYST, NMHC_CATALYST, NOX_AFTERTREATMENT ->
                EnumSet.of(COLD_START, WARM_UP, STEADY, IDLE_WARM);
            case EVAPORATIVE_SYSTEM -> EnumSet.of(FUEL, COLD_START, WARM_UP, STEADY, IDLE_WARM);
            case SECONDARY_AIR, OXYGEN_SENSOR_HEATER -> EnumSet.of(COLD_START, IDLE_COLD, WARM_UP);
            case OXYGEN_SENSOR, EXHAUST_GAS_SENSOR, GASOLINE_PARTICULATE_FILTER, PM_FILTER ->
                EnumSet.of(WARM_UP, STEADY, COAST);
            case EGR_VVT, BOOST_PRESSURE -> EnumSet.of(WARM_UP, STEADY, COAST, IDLE_WARM);
            case MISFIRE, FUEL_SYSTEM -> EnumSet.of(WARM_UP, STEADY, ORDINARY, IDLE_WARM);
            case COMPONENTS -> EnumSet.of(COLD_START, WARM_UP, ORDINARY);
        };
    }

    /** What a person who is no technician calls it. */
    static String plainName(MonitorGroup group) {
        return switch (group) {
            case CATALYST, HEATED_CATALYST -> "catalytic converter";
            case NMHC_CATALYST, NOX_AFTERTREATMENT -> "exhaust cleaning";
            case EVAPORATIVE_SYSTEM -> "fuel vapour system";
            case SECONDARY_AIR -> "air pump of the exhaust";
            case OXYGEN_SENSOR, EXHAUST_GAS_SENSOR -> "exhaust sensor";
            case OXYGEN_SENSOR_HEATER -> "heater of the exhaust sensor";
            case GASOLINE_PARTICULATE_FILTER, PM_FILTER -> "particle filter";
            case EGR_VVT -> "exhaust gas return or valve timing";
            case BOOST_PRESSURE -> "turbocharger pressure";
            case MISFIRE -> "ignition of the cylinders";
            case FUEL_SYSTEM -> "fuel mixture";
            case COMPONENTS -> "sensors and switches";
        };
    }

    static List<String> words(Set<PartOfDrive> parts) {
        return parts.stream().sorted().map(PartOfDrive::words).toList();
    }
}
