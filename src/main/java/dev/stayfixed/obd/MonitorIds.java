package dev.stayfixed.obd;

import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which service $06 monitors (OBDMID) decide which code. Derived by us from the names on both sides: SAE J1979 names the monitors,
 * SAE J2012 the codes.
 */
final class MonitorIds {

    private record Row(Set<Integer> monitorIds, CodeRanges codes) {}

    private static final Row[] ROWS = {
        row("0130-0134", 0x01),
        row("0136-0140", 0x02),
        row("0142-0146", 0x03),
        row("0150-0154", 0x05),
        row("0156-0160", 0x06),
        row("0162-0166", 0x07),
        row("0420-0422", 0x21),
        row("0430-0432", 0x22),
        row("0400-0409", 0x31),
        row("0010-0015", 0x35),
        row("0020-0025", 0x36),
        row("0455 0457", 0x39, 0x3A),
        row("0442", 0x3B),
        row("0456", 0x3C),
        row("0441 0496", 0x3D),
        row("0030-0032 0135", 0x41),
        row("0036-0038 0141", 0x42),
        row("0042-0044 0147", 0x43),
        row("0050-0052 0155", 0x45),
        row("0056-0058 0161", 0x46),
        row("0062-0064 0167", 0x47),
        row("0423-0424", 0x61),
        row("0433-0434", 0x62),
        row("0410-0419", 0x71),
        row("0170-0172", 0x81),
        row("0173-0175", 0x82),
        row("0299", 0x85),
        row("2000", 0x90),
        row("2001", 0x91),
        row("0300", 0xA1),
        row("2002", 0xB0),
        row("2003", 0xB1),
    };

    private static final CodeRanges MISFIRING_CYLINDERS = CodeRanges.of("0301-0312");

    private MonitorIds() {}

    private static Row row(String codes, Integer... monitorIds) {
        return new Row(Set.of(monitorIds), CodeRanges.of(codes));
    }

    static Set<Integer> of(TroubleCode code, Ignition ignition) {
        if (ignition == Ignition.COMPRESSION && isOfSparkEnginesOnly(code)) {
            return Set.of();
        }
        if (MISFIRING_CYLINDERS.contain(code)) {
            return Set.of(0xA2 + cylinder(code) - 1);
        }
        Set<Integer> ids = new TreeSet<>();
        Arrays.stream(ROWS)
                .filter(row -> row.codes().contain(code))
                .map(Row::monitorIds)
                .forEach(ids::addAll);
        return Set.copyOf(ids);
    }

    /** A compression engine has neither an evaporative system nor secondary air. */
    private static boolean isOfSparkEnginesOnly(TroubleCode code) {
        MonitorGroup group = CodeGroups.groupOf(code, Ignition.SPARK);
        return group == MonitorGroup.EVAPORATIVE_SYSTEM || group == MonitorGroup.SECONDARY_AIR;
    }

    /** The last two digits are decimal: P0310 is cylinder 10. */
    private static int cylinder(TroubleCode code) {
        return 10 * (code.number() >> 4 & 0xF) + (code.number() & 0xF);
    }
}
