package dev.stayfixed.recording;

import static java.util.Map.entry;

import dev.stayfixed.drive.signal.Signal;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The names of the COVESA Vehicle Signal Specification, versions 4.0 to 6.0, with the units that it gives them. */
final class VssNames {

    private static final String SOURCE = "Vehicle Signal Specification";
    private static final String OBD = "vehicle.obd.";
    private static final String ENGINE = "vehicle.powertrain.combustionengine.";

    private static final Map<String, Signal> NAMES = Map.ofEntries(
            entry(OBD + "enginespeed", Signal.ENGINE_SPEED),
            entry(OBD + "speed", Signal.VEHICLE_SPEED),
            entry(OBD + "coolanttemperature", Signal.COOLANT),
            entry(OBD + "intaketemp", Signal.INTAKE_AIR),
            entry(OBD + "ambientairtemperature", Signal.AMBIENT),
            entry(OBD + "oiltemperature", Signal.OIL),
            entry(OBD + "catalyst.bank1.temperature1", Signal.CATALYST),
            entry(OBD + "engineload", Signal.LOAD),
            entry(OBD + "absoluteload", Signal.ABSOLUTE_LOAD),
            entry(OBD + "maf", Signal.AIR_FLOW),
            entry(OBD + "map", Signal.MANIFOLD_PRESSURE),
            entry(OBD + "barometricpressure", Signal.BAROMETER),
            entry(OBD + "throttleposition", Signal.THROTTLE),
            entry(OBD + "acceleratorpositiond", Signal.PEDAL),
            entry(OBD + "fuellevel", Signal.FUEL_LEVEL),
            entry(OBD + "shorttermfueltrim1", Signal.SHORT_TRIM),
            entry(OBD + "longtermfueltrim1", Signal.LONG_TRIM),
            entry(OBD + "shorttermfueltrim2", Signal.SHORT_TRIM_2),
            entry(OBD + "longtermfueltrim2", Signal.LONG_TRIM_2),
            entry(OBD + "commandedevap", Signal.PURGE),
            entry(OBD + "evapvaporpressure", Signal.EVAP_PRESSURE),
            entry(OBD + "controlmodulevoltage", Signal.MODULE_VOLTAGE),
            entry(OBD + "runtime", Signal.RUN_TIME),
            entry(OBD + "distancesincedtcclear", Signal.DISTANCE_SINCE_CLEAR),
            entry(OBD + "warmupssincedtcclear", Signal.WARM_UPS_SINCE_CLEAR),
            entry(OBD + "timesincedtccleared", Signal.MINUTES_SINCE_CLEAR),
            entry(OBD + "status.ismilon", Signal.MIL),
            entry("vehicle.speed", Signal.VEHICLE_SPEED),
            entry("vehicle.traveleddistance", Signal.ODOMETER),
            entry("vehicle.traveleddistancesincestart", Signal.TRIP_DISTANCE),
            entry("vehicle.exterior.airtemperature", Signal.AMBIENT),
            entry(ENGINE + "speed", Signal.ENGINE_SPEED),
            entry(ENGINE + "ect", Signal.COOLANT),
            entry(ENGINE + "enginecoolant.temperature", Signal.COOLANT),
            entry(ENGINE + "eot", Signal.OIL),
            entry(ENGINE + "engineoil.temperature", Signal.OIL),
            entry(ENGINE + "map", Signal.MANIFOLD_PRESSURE),
            entry(ENGINE + "maf", Signal.AIR_FLOW),
            entry(ENGINE + "tps", Signal.THROTTLE),
            entry("vehicle.powertrain.fuelsystem.relativelevel", Signal.FUEL_LEVEL),
            entry("vehicle.chassis.accelerator.pedalposition", Signal.PEDAL));

    private VssNames() {}

    static Optional<KnownName> named(String header) {
        String name = plain(header);
        Signal signal = NAMES.get(name);
        if (signal == null) {
            return Optional.empty();
        }
        SourceUnit unit = signal == Signal.MIL ? SourceUnit.SWITCH : SourceUnit.canonical(signal);
        return Optional.of(new KnownName(signal, unit, SOURCE, name.startsWith("vehicle.traveleddistance")));
    }

    /** Names that version 6.0 no longer has. */
    static boolean isBefore6(String header) {
        String name = plain(header);
        return name.equals(ENGINE + "ect") || name.equals(ENGINE + "eot");
    }

    /** In lower case and without a unit in brackets. */
    private static String plain(String header) {
        return HeaderText.clean(header).replaceAll("\\s*[\\[(].*", "").toLowerCase(Locale.ROOT);
    }
}
