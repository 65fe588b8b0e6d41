package dev.stayfixed.customer;

import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.util.EnumSet;
import java.util.Set;

/**
 * The parts of which a drive for a monitor is made, in the order in which they are driven. The figures lie inside published ones: fuel
 * level and 10 minutes at 45 to 65 mph for the evaporative system (New York State inspection programme; maker samples of 50 to 75 %
 * fuel), soak of 8 hours (the same), 70 to 120 km/h (a Nissan driving pattern), 26 to 103 km/h for the catalyst (Mazda, 2003), more
 * than 10 minutes of running before the catalyst's idle test (Buick, 2005). Idling after a cold start, coasting in gear, ordinary
 * driving for the continuous monitors: from memory. The vehicle's service information overrides all of it.
 */
enum PartOfDrive implements Kind {
    FUEL,
    COLD_START,
    IDLE_COLD,
    WARM_UP,
    STEADY,
    COAST,
    ORDINARY,
    IDLE_WARM;

    /** With what is seen at a glance. */
    PlainStep step() {
        return new PlainStep(
                switch (this) {
                    case FUEL ->
                        Reason.of(
                                DriverReason.FROM, Quantity.whole(50, Unit.PERCENT), Quantity.whole(75, Unit.PERCENT));
                    case COLD_START -> Quantity.whole(8, Unit.HOUR);
                    case IDLE_COLD, IDLE_WARM -> Quantity.whole(2, Unit.MINUTE);
                    case WARM_UP, STEADY, ORDINARY -> Quantity.whole(10, Unit.MINUTE);
                    case COAST -> DriverReason.THREE_TIMES;
                },
                this);
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
}
