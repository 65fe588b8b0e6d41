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
 * @param label what it is, in plain trade words
 * @param length bytes of data
 * @param signed the bytes are two's complement
 * @param unit SI or trade unit as printed, "" for a plain number
 */
public record Pid(
        int number,
        String label,
        int length,
        boolean signed,
        double numerator,
        double denominator,
        double offset,
        String unit) {

    private static final Map<Integer, Pid> BY_NUMBER = Stream.of(
                    percent(0x04, "calculated load"),
                    temperature(0x05, "engine coolant temperature"),
                    trim(0x06, "short term fuel trim bank 1"),
                    trim(0x07, "long term fuel trim bank 1"),
                    trim(0x08, "short term fuel trim bank 2"),
                    trim(0x09, "long term fuel trim bank 2"),
                    plain(0x0A, "fuel pressure", 1, 3, "kPa"),
                    plain(0x0B, "intake manifold pressure", 1, 1, "kPa"),
                    divided(0x0C, "engine speed", 2, 4, 0, "rpm"),
                    plain(0x0D, "vehicle speed", 1, 1, "km/h"),
                    divided(0x0E, "timing advance", 1, 2, -64, "°"),
                    temperature(0x0F, "intake air temperature"),
                    divided(0x10, "air flow", 2, 100, 0, "g/s"),
                    percent(0x11, "throttle position"),
                    plain(0x1C, "OBD requirements", 1, 1, ""),
                    plain(0x1F, "run time since engine start", 2, 1, "s"),
                    plain(0x21, "distance with the MIL on", 2, 1, "km"),
                    percent(0x2C, "commanded EGR"),
                    trim(0x2D, "EGR error"),
                    percent(0x2E, "commanded evaporative purge"),
                    percent(0x2F, "fuel level"),
                    plain(0x30, "warm-ups since codes cleared", 1, 1, ""),
                    plain(0x31, "distance since codes cleared", 2, 1, "km"),
                    new Pid(0x32, "evaporative system vapour pressure", 2, true, 1, 4, 0, "Pa"),
                    plain(0x33, "barometric pressure", 1, 1, "kPa"),
                    divided(0x3C, "catalyst temperature bank 1 sensor 1", 2, 10, -40, "°C"),
                    divided(0x3D, "catalyst temperature bank 2 sensor 1", 2, 10, -40, "°C"),
                    divided(0x3E, "catalyst temperature bank 1 sensor 2", 2, 10, -40, "°C"),
                    divided(0x3F, "catalyst temperature bank 2 sensor 2", 2, 10, -40, "°C"),
                    divided(0x42, "control module voltage", 2, 1000, 0, "V"),
                    new Pid(0x43, "absolute load", 2, false, 100, 255, 0, "%"),
                    new Pid(0x44, "commanded equivalence ratio", 2, false, 2, 65536, 0, ""),
                    percent(0x45, "relative throttle position"),
                    temperature(0x46, "ambient air temperature"),
                    percent(0x47, "throttle position B"),
                    percent(0x48, "throttle position C"),
                    percent(0x49, "accelerator pedal position D"),
                    percent(0x4A, "accelerator pedal position E"),
                    percent(0x4B, "accelerator pedal position F"),
                    percent(0x4C, "commanded throttle"),
                    plain(0x4D, "run time with the MIL on", 2, 1, "min"),
                    plain(0x4E, "run time since codes cleared", 2, 1, "min"),
                    plain(0x51, "fuel type", 1, 1, ""),
                    percent(0x52, "ethanol in fuel"),
                    percent(0x5A, "relative accelerator pedal position"),
                    percent(0x5B, "hybrid battery charge"),
                    temperature(0x5C, "engine oil temperature"),
                    divided(0x5E, "fuel rate", 2, 20, 0, "L/h"),
                    divided(0x61, "demanded torque", 1, 1, -125, "%"),
                    divided(0x62, "actual torque", 1, 1, -125, "%"),
                    plain(0x63, "reference torque", 2, 1, "Nm"),
                    divided(0xA6, "odometer", 4, 10, 0, "km"))
            .collect(Collectors.toUnmodifiableMap(Pid::number, Function.identity()));

    private static Pid plain(int number, String label, int length, int factor, String unit) {
        return new Pid(number, label, length, false, factor, 1, 0, unit);
    }

    private static Pid divided(int number, String label, int length, int denominator, int offset, String unit) {
        return new Pid(number, label, length, false, 1, denominator, offset, unit);
    }

    private static Pid percent(int number, String label) {
        return new Pid(number, label, 1, false, 100, 255, 0, "%");
    }

    private static Pid trim(int number, String label) {
        return new Pid(number, label, 1, false, 100, 128, -100, "%");
    }

    private static Pid temperature(int number, String label) {
        return new Pid(number, label, 1, false, 1, 1, -40, "°C");
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
