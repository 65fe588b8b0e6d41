package dev.stayfixed.obd;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The formula of a service $01 parameter: the bytes, high one first, as one number, times {@code numerator / denominator}, plus
 * {@code offset}. Sources: the decoders of two public libraries and COVESA VSS, which agree; the odometer ($A6) is from memory, and so
 * are the throttle, pedal, EGR, hybrid battery and ethanol parameters that share the percent formula.
 *
 * @param number PID
 * @param name what it is
 * @param length bytes of data
 * @param signed the bytes are two's complement
 * @param unit SI or trade unit as printed, "" for a plain number
 */
public record Pid(
        int number,
        PidName name,
        int length,
        boolean signed,
        double numerator,
        double denominator,
        double offset,
        String unit) {

    private static final Map<Integer, Pid> BY_NUMBER = Stream.of(
                    percent(0x04, PidName.CALCULATED_LOAD),
                    temperature(0x05, PidName.ENGINE_COOLANT_TEMPERATURE),
                    trim(0x06, PidName.SHORT_TERM_FUEL_TRIM_BANK_1),
                    trim(0x07, PidName.LONG_TERM_FUEL_TRIM_BANK_1),
                    trim(0x08, PidName.SHORT_TERM_FUEL_TRIM_BANK_2),
                    trim(0x09, PidName.LONG_TERM_FUEL_TRIM_BANK_2),
                    plain(0x0A, PidName.FUEL_PRESSURE, 1, 3, "kPa"),
                    plain(0x0B, PidName.INTAKE_MANIFOLD_PRESSURE, 1, 1, "kPa"),
                    divided(0x0C, PidName.ENGINE_SPEED, 2, 4, 0, "rpm"),
                    plain(0x0D, PidName.VEHICLE_SPEED, 1, 1, "km/h"),
                    divided(0x0E, PidName.TIMING_ADVANCE, 1, 2, -64, "°"),
                    temperature(0x0F, PidName.INTAKE_AIR_TEMPERATURE),
                    divided(0x10, PidName.AIR_FLOW, 2, 100, 0, "g/s"),
                    percent(0x11, PidName.THROTTLE_POSITION),
                    plain(0x1C, PidName.OBD_REQUIREMENTS, 1, 1, ""),
                    plain(0x1F, PidName.RUN_TIME_SINCE_ENGINE_START, 2, 1, "s"),
                    plain(0x21, PidName.DISTANCE_WITH_THE_MIL_ON, 2, 1, "km"),
                    percent(0x2C, PidName.COMMANDED_EGR),
                    trim(0x2D, PidName.EGR_ERROR),
                    percent(0x2E, PidName.COMMANDED_EVAPORATIVE_PURGE),
                    percent(0x2F, PidName.FUEL_LEVEL),
                    plain(0x30, PidName.WARM_UPS_SINCE_CODES_CLEARED, 1, 1, ""),
                    plain(0x31, PidName.DISTANCE_SINCE_CODES_CLEARED, 2, 1, "km"),
                    new Pid(0x32, PidName.EVAPORATIVE_SYSTEM_VAPOUR_PRESSURE, 2, true, 1, 4, 0, "Pa"),
                    plain(0x33, PidName.BAROMETRIC_PRESSURE, 1, 1, "kPa"),
                    divided(0x3C, PidName.CATALYST_TEMPERATURE_BANK_1_SENSOR_1, 2, 10, -40, "°C"),
                    divided(0x3D, PidName.CATALYST_TEMPERATURE_BANK_2_SENSOR_1, 2, 10, -40, "°C"),
                    divided(0x3E, PidName.CATALYST_TEMPERATURE_BANK_1_SENSOR_2, 2, 10, -40, "°C"),
                    divided(0x3F, PidName.CATALYST_TEMPERATURE_BANK_2_SENSOR_2, 2, 10, -40, "°C"),
                    divided(0x42, PidName.CONTROL_MODULE_VOLTAGE, 2, 1000, 0, "V"),
                    new Pid(0x43, PidName.ABSOLUTE_LOAD, 2, false, 100, 255, 0, "%"),
                    new Pid(0x44, PidName.COMMANDED_EQUIVALENCE_RATIO, 2, false, 2, 65536, 0, ""),
                    percent(0x45, PidName.RELATIVE_THROTTLE_POSITION),
                    temperature(0x46, PidName.AMBIENT_AIR_TEMPERATURE),
                    percent(0x47, PidName.THROTTLE_POSITION_B),
                    percent(0x48, PidName.THROTTLE_POSITION_C),
                    percent(0x49, PidName.ACCELERATOR_PEDAL_POSITION_D),
                    percent(0x4A, PidName.ACCELERATOR_PEDAL_POSITION_E),
                    percent(0x4B, PidName.ACCELERATOR_PEDAL_POSITION_F),
                    percent(0x4C, PidName.COMMANDED_THROTTLE),
                    plain(0x4D, PidName.RUN_TIME_WITH_THE_MIL_ON, 2, 1, "min"),
                    plain(0x4E, PidName.RUN_TIME_SINCE_CODES_CLEARED, 2, 1, "min"),
                    plain(0x51, PidName.FUEL_TYPE, 1, 1, ""),
                    percent(0x52, PidName.ETHANOL_IN_FUEL),
                    percent(0x5A, PidName.RELATIVE_ACCELERATOR_PEDAL_POSITION),
                    percent(0x5B, PidName.HYBRID_BATTERY_CHARGE),
                    temperature(0x5C, PidName.ENGINE_OIL_TEMPERATURE),
                    divided(0x5E, PidName.FUEL_RATE, 2, 20, 0, "L/h"),
                    divided(0x61, PidName.DEMANDED_TORQUE, 1, 1, -125, "%"),
                    divided(0x62, PidName.ACTUAL_TORQUE, 1, 1, -125, "%"),
                    plain(0x63, PidName.REFERENCE_TORQUE, 2, 1, "Nm"),
                    divided(0xA6, PidName.ODOMETER, 4, 10, 0, "km"))
            .collect(Collectors.toUnmodifiableMap(Pid::number, Function.identity()));

    private static Pid plain(int number, PidName name, int length, int factor, String unit) {
        return new Pid(number, name, length, false, factor, 1, 0, unit);
    }

    private static Pid divided(int number, PidName name, int length, int denominator, int offset, String unit) {
        return new Pid(number, name, length, false, 1, denominator, offset, unit);
    }

    private static Pid percent(int number, PidName name) {
        return new Pid(number, name, 1, false, 100, 255, 0, "%");
    }

    private static Pid trim(int number, PidName name) {
        return new Pid(number, name, 1, false, 100, 128, -100, "%");
    }

    private static Pid temperature(int number, PidName name) {
        return new Pid(number, name, 1, false, 1, 1, -40, "°C");
    }

    /** Empty for a PID whose formula this table does not hold. */
    public static Optional<Pid> of(int number) {
        return Optional.ofNullable(BY_NUMBER.get(number));
    }

    /**
     * The parameter in its unit.
     *
     * @param data exactly {@link #length()} bytes, each 0x00 to 0xFF
     */
    public double value(List<Integer> data) {
        if (data.size() != length) {
            Bytes.checkRange("data bytes of PID " + Bytes.hex(number), data.size(), length, length);
        }
        long raw = 0;
        for (int value : data) {
            Bytes.checkByte("data byte", value);
            raw = raw << 8 | value;
        }
        if (signed) {
            raw = raw << (64 - 8 * length) >> (64 - 8 * length);
        }
        return raw * numerator / denominator + offset;
    }
}
