package dev.stayfixed.obd;

import static dev.stayfixed.obd.MonitorGroup.*;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Readiness as one control unit or, merged, the whole vehicle reports it (SAE J1979 service $01 PID $01 or $41).
 *
 * @param milCommanded byte A bit 7; always false in PID $41
 * @param confirmedCount byte A bits 6 to 0, 0 to 127; merged, the sum over the control units
 * @param supported monitors supported ($01) or enabled in this cycle ($41)
 * @param incomplete of the supported ones, those not complete; bits of byte D that byte C does not support are dropped
 */
public record Readiness(
        boolean milCommanded,
        int confirmedCount,
        Ignition ignition,
        Set<MonitorGroup> supported,
        Set<MonitorGroup> incomplete) {

    /** Byte B, bits 0 to 2 and again, for "not complete", 4 to 6. */
    private static final List<Optional<MonitorGroup>> CONTINUOUS =
            List.of(Optional.of(MISFIRE), Optional.of(FUEL_SYSTEM), Optional.of(COMPONENTS));

    /** Bytes C and D of a spark engine, bit 0 first. Bit 4 stood for A/C refrigerant in older issues (from memory). */
    private static final List<Optional<MonitorGroup>> SPARK = List.of(
            Optional.of(CATALYST),
            Optional.of(HEATED_CATALYST),
            Optional.of(EVAPORATIVE_SYSTEM),
            Optional.of(SECONDARY_AIR),
            Optional.of(GASOLINE_PARTICULATE_FILTER),
            Optional.of(OXYGEN_SENSOR),
            Optional.of(OXYGEN_SENSOR_HEATER),
            Optional.of(EGR_VVT));

    private static final List<Optional<MonitorGroup>> COMPRESSION = List.of(
            Optional.of(NMHC_CATALYST),
            Optional.of(NOX_AFTERTREATMENT),
            Optional.empty(),
            Optional.of(BOOST_PRESSURE),
            Optional.empty(),
            Optional.of(EXHAUST_GAS_SENSOR),
            Optional.of(PM_FILTER),
            Optional.of(EGR_VVT));

    public Readiness {
        supported = Set.copyOf(supported);
        incomplete = Set.copyOf(incomplete);
    }

    /** The four data bytes A to D, each 0x00 to 0xFF; for PID $41 give 0 as {@code a}, which is reserved there. */
    public static Readiness ofBytes(int a, int b, int c, int d) {
        Bytes.checkByte("byte A", a);
        Bytes.checkByte("byte B", b);
        Bytes.checkByte("byte C", c);
        Bytes.checkByte("byte D", d);
        Ignition ignition = (b & 0x08) == 0 ? Ignition.SPARK : Ignition.COMPRESSION;
        List<Optional<MonitorGroup>> layout = ignition == Ignition.SPARK ? SPARK : COMPRESSION;
        Set<MonitorGroup> supported = named(CONTINUOUS, b);
        supported.addAll(named(layout, c));
        Set<MonitorGroup> incomplete = named(CONTINUOUS, b & b >> 4);
        incomplete.addAll(named(layout, c & d));
        return new Readiness((a & 0x80) != 0, a & 0x7F, ignition, supported, incomplete);
    }

    private static Set<MonitorGroup> named(List<Optional<MonitorGroup>> layout, int bits) {
        Set<MonitorGroup> groups = EnumSet.noneOf(MonitorGroup.class);
        for (int bit = 0; bit < layout.size(); bit++) {
            if ((bits >> bit & 1) == 1) {
                layout.get(bit).ifPresent(groups::add);
            }
        }
        return groups;
    }

    /**
     * Two control units of one vehicle: what either calls incomplete is incomplete, either commands the MIL, the codes add up. The
     * ignition is that of the unit that supports more monitors, which is the engine's.
     */
    public Readiness merge(Readiness other) {
        return new Readiness(
                milCommanded || other.milCommanded,
                confirmedCount + other.confirmedCount,
                other.supported.size() > supported.size() ? other.ignition : ignition,
                union(supported, other.supported),
                union(incomplete, other.incomplete));
    }

    private static Set<MonitorGroup> union(Set<MonitorGroup> one, Set<MonitorGroup> other) {
        Set<MonitorGroup> all = EnumSet.noneOf(MonitorGroup.class);
        all.addAll(one);
        all.addAll(other);
        return all;
    }

    public boolean supports(MonitorGroup group) {
        return supported.contains(group);
    }

    public MonitorState state(MonitorGroup group) {
        if (!supported.contains(group)) {
            return MonitorState.NOT_SUPPORTED;
        }
        return incomplete.contains(group) ? MonitorState.INCOMPLETE : MonitorState.COMPLETE;
    }

    public boolean isComplete(MonitorGroup group) {
        return supported.contains(group) && !incomplete.contains(group);
    }
}
