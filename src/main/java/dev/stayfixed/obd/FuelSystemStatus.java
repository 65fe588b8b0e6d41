package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import java.util.Arrays;
import java.util.Optional;

/** One byte of service $01 PID $03: exactly one bit says how the fuel system runs. Source: a public decoder library's table. */
public enum FuelSystemStatus {
    OPEN_LOOP_COLD(0x01, "open loop, not yet warm enough"),
    CLOSED_LOOP(0x02, "closed loop"),
    OPEN_LOOP_LOAD(0x04, "open loop because of load or deceleration"),
    OPEN_LOOP_FAULT(0x08, "open loop because of a fault"),
    CLOSED_LOOP_FAULT(0x10, "closed loop with a fault in a feedback sensor");

    private final int bit;
    private final String label;

    FuelSystemStatus(int bit, String label) {
        this.bit = bit;
        this.label = label;
    }

    /** For people. */
    public String label() {
        return label;
    }

    /**
     * Reads one of the two bytes.
     *
     * @param value 0x00 where the vehicle has no such system; else one bit
     */
    public static Optional<FuelSystemStatus> ofByte(int value) {
        if (value == 0) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(values())
                .filter(status -> status.bit == value)
                .findFirst()
                .orElseThrow(() -> new ObdFormatException(
                        Bytes.hex(value), 0, Part.verbatim(Bytes.hex(value)), ObdExpected.ONE_BIT)));
    }
}
