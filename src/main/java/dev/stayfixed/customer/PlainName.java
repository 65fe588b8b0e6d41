package dev.stayfixed.customer;

import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.reason.Kind;

/** What a person who is no technician calls what a monitor checks. */
enum PlainName implements Kind {
    CATALYTIC_CONVERTER,
    EXHAUST_CLEANING,
    FUEL_VAPOUR_SYSTEM,
    AIR_PUMP_OF_THE_EXHAUST,
    EXHAUST_SENSOR,
    HEATER_OF_THE_EXHAUST_SENSOR,
    PARTICLE_FILTER,
    EXHAUST_GAS_RETURN_OR_VALVE_TIMING,
    TURBOCHARGER_PRESSURE,
    IGNITION_OF_THE_CYLINDERS,
    FUEL_MIXTURE,
    SENSORS_AND_SWITCHES;

    static PlainName of(MonitorGroup group) {
        return switch (group) {
            case CATALYST, HEATED_CATALYST -> CATALYTIC_CONVERTER;
            case NMHC_CATALYST, NOX_AFTERTREATMENT -> EXHAUST_CLEANING;
            case EVAPORATIVE_SYSTEM -> FUEL_VAPOUR_SYSTEM;
            case SECONDARY_AIR -> AIR_PUMP_OF_THE_EXHAUST;
            case OXYGEN_SENSOR, EXHAUST_GAS_SENSOR -> EXHAUST_SENSOR;
            case OXYGEN_SENSOR_HEATER -> HEATER_OF_THE_EXHAUST_SENSOR;
            case GASOLINE_PARTICULATE_FILTER, PM_FILTER -> PARTICLE_FILTER;
            case EGR_VVT -> EXHAUST_GAS_RETURN_OR_VALVE_TIMING;
            case BOOST_PRESSURE -> TURBOCHARGER_PRESSURE;
            case MISFIRE -> IGNITION_OF_THE_CYLINDERS;
            case FUEL_SYSTEM -> FUEL_MIXTURE;
            case COMPONENTS -> SENSORS_AND_SWITCHES;
        };
    }
}
