package dev.stayfixed.obd;

import java.util.Map;

/** Service $01 PID $1C: the OBD requirements to which the vehicle was built. Source: two public decoder libraries, which agree. */
public final class ObdRequirement {

    private static final Map<Integer, String> NAMES = Map.ofEntries(
            Map.entry(0x01, "OBD II (CARB)"),
            Map.entry(0x02, "OBD (EPA)"),
            Map.entry(0x03, "OBD and OBD II"),
            Map.entry(0x04, "OBD I"),
            Map.entry(0x05, "not OBD compliant"),
            Map.entry(0x06, "EOBD"),
            Map.entry(0x07, "EOBD and OBD II"),
            Map.entry(0x08, "EOBD and OBD"),
            Map.entry(0x09, "EOBD, OBD and OBD II"),
            Map.entry(0x0A, "JOBD"),
            Map.entry(0x0B, "JOBD and OBD II"),
            Map.entry(0x0C, "JOBD and EOBD"),
            Map.entry(0x0D, "JOBD, EOBD and OBD II"),
            Map.entry(0x11, "EMD"),
            Map.entry(0x12, "EMD+"),
            Map.entry(0x13, "HD OBD-C"),
            Map.entry(0x14, "HD OBD"),
            Map.entry(0x15, "WWH OBD"),
            Map.entry(0x17, "HD EOBD-I"),
            Map.entry(0x18, "HD EOBD-I N"),
            Map.entry(0x19, "HD EOBD-II"),
            Map.entry(0x1A, "HD EOBD-II N"),
            Map.entry(0x1C, "OBDBr-1"),
            Map.entry(0x1D, "OBDBr-2"),
            Map.entry(0x1E, "KOBD"),
            Map.entry(0x1F, "IOBD I"),
            Map.entry(0x20, "IOBD II"),
            Map.entry(0x21, "HD EOBD-VI"));

    private ObdRequirement() {}

    /** The name, or "unknown (34)" for a number that this table does not hold: later issues add some, so the number is kept. */
    public static String name(int value) {
        return NAMES.getOrDefault(value, "unknown (" + value + ")");
    }
}
