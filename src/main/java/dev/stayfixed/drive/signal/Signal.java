package dev.stayfixed.drive.signal;

import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Unit;
import java.util.OptionalInt;

/**
 * What a log can record, each in one canonical unit and with the range in which a working car's value can lie (both ends inclusive).
 * A value outside it is a broken sensor, a wrong unit or a wrong column, never a drive. The ranges are common practice, no source,
 * inside what the bytes of SAE J1979 can express.
 */
public enum Signal implements Kind {
    ENGINE_SPEED(0x0C, "engine speed", Unit.RPM, 0, 12_000),
    VEHICLE_SPEED(0x0D, "vehicle speed", Unit.KILOMETRE_PER_HOUR, 0, 300),
    COOLANT(0x05, "coolant temperature", Unit.CELSIUS, -50, 150),
    INTAKE_AIR(0x0F, "intake air temperature", Unit.CELSIUS, -60, 200),
    AMBIENT(0x46, "ambient temperature", Unit.CELSIUS, -60, 70),
    OIL(0x5C, "oil temperature", Unit.CELSIUS, -50, 200),
    CATALYST(0x3C, "catalyst temperature", Unit.CELSIUS, -60, 1_300),
    LOAD(0x04, "calculated load", Unit.PERCENT, 0, 100),
    ABSOLUTE_LOAD(0x43, "absolute load", Unit.PERCENT, 0, 600),
    AIR_FLOW(0x10, "air flow", Unit.GRAM_PER_SECOND, 0, 1_000),
    MANIFOLD_PRESSURE(0x0B, "manifold pressure", Unit.KILOPASCAL, 0, 500),
    BAROMETER(0x33, "barometric pressure", Unit.KILOPASCAL, 45, 110),
    THROTTLE(0x11, "throttle position", Unit.PERCENT, 0, 100),
    PEDAL(0x49, "accelerator pedal", Unit.PERCENT, 0, 100),
    FUEL_LEVEL(0x2F, "fuel level", Unit.PERCENT, 0, 100),
    SHORT_TRIM(0x06, "short-term fuel trim, bank 1", Unit.PERCENT, -100, 100),
    LONG_TRIM(0x07, "long-term fuel trim, bank 1", Unit.PERCENT, -100, 100),
    SHORT_TRIM_2(0x08, "short-term fuel trim, bank 2", Unit.PERCENT, -100, 100),
    LONG_TRIM_2(0x09, "long-term fuel trim, bank 2", Unit.PERCENT, -100, 100),
    PURGE(0x2E, "commanded evaporative purge", Unit.PERCENT, 0, 100),
    EVAP_PRESSURE(0x32, "evaporative system pressure", Unit.PASCAL, -10_000, 10_000),
    MODULE_VOLTAGE(0x42, "control module voltage", Unit.VOLT, 0, 36),
    RUN_TIME(0x1F, "engine run time", Unit.SECOND, 0, 345_600),
    TRIP_DISTANCE(-1, "distance in this drive", Unit.KILOMETRE, 0, 5_000),
    ODOMETER(0xA6, "odometer", Unit.KILOMETRE, 0, 5_000_000),
    DISTANCE_SINCE_CLEAR(0x31, "distance since codes were cleared", Unit.KILOMETRE, 0, 65_535),
    WARM_UPS_SINCE_CLEAR(0x30, "warm-ups since codes were cleared", Unit.TIMES, 0, 255),
    MINUTES_SINCE_CLEAR(0x4E, "engine run time since codes were cleared", Unit.MINUTE, 0, 65_535),
    MIL(-1, "malfunction indicator lamp", Unit.ON, 0, 1),
    /** The four data bytes of PID $01 as one number, byte A highest. */
    READINESS(0x01, "readiness since clear", Unit.BYTES, 0, 0xFFFF_FFFFL),
    /** The four data bytes of PID $41 as one number, byte A highest. */
    CYCLE_READINESS(0x41, "readiness in this driving cycle", Unit.BYTES, 0, 0xFFFF_FFFFL);

    private final int pid;
    private final String words;
    private final Unit unit;
    private final double lowest;
    private final double highest;

    Signal(int pid, String words, Unit unit, double lowest, double highest) {
        this.pid = pid;
        this.words = words;
        this.unit = unit;
        this.lowest = lowest;
        this.highest = highest;
    }

    /** The service $01 PID of SAE J1979 that carries it; empty where it is only a part of one, or none. */
    public OptionalInt pid() {
        return pid < 0 ? OptionalInt.empty() : OptionalInt.of(pid);
    }

    /** Its place among all signals, from 0. */
    @SuppressWarnings("EnumOrdinal") // rows keep their values in arrays; nothing that is stored knows this number
    public int index() {
        return ordinal();
    }

    public String words() {
        return words;
    }

    /** The canonical unit, as it is printed. */
    public String unit() {
        return unit.symbol();
    }

    public Unit measure() {
        return unit;
    }

    public double lowest() {
        return lowest;
    }

    public double highest() {
        return highest;
    }

    /** Whether a working car can show this value; false for NaN and the infinities. */
    public boolean isPlausible(double value) {
        return value >= lowest && value <= highest;
    }
}
