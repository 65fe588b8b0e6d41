package dev.stayfixed.obd;

import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which service $06 monitors (OBDMID) decide which code. Derived by us from the names on both sides: SAE J1979 names the monitors,
 * SAE J2012 the codes. Circuits are left out: their continuous checks leave no result, and one of the system says nothing about them.
 */
final class MonitorIds {

    private record Row(Set<Integer> monitorIds, CodeRanges codes) {}

    private static final Row[] ROWS = {
        row("0133 014C-014D 015A-015B", 0x01),
        row("0139 013A-013B 013E-013F", 0x02),
        row("0145", 0x03),
        row("0153 014E-014F 015C-015D", 0x05),
        row("0159 013C-013D 014A-014B", 0x06),
        row("0165", 0x07),
        row("0420-0422", 0x21),
        row("0430-0432", 0x22),
        row("0400-0402", 0x31),
        row("0011-0012 0014-0015 000A-000B", 0x35),
        row("0021-0022 0024-0025 000C-000D", 0x36),
        row("0455 0457", 0x39, 0x3A),
        row("0442", 0x3B),
        row("0456", 0x3C),
        row("0441 0496", 0x3D),
        row("0053 0135", 0x41),
        row("0054 0141", 0x42),
        row("0055 0147", 0x43),
        row("0059 0155", 0x45),
        row("0060 0161", 0x46),
        row("0061 0167", 0x47),
        row("0423-0424", 0x61),
        row("0433-0434", 0x62),
        row("0410-0411 0491", 0x71),
        row("0492", 0x72),
        row("0170-0172", 0x81),
        row("0173-0175", 0x82),
        row("0299", 0x85),
        row("02CB", 0x86),
        row("2000", 0x90),
        row("2001", 0x91),
        row("20EE", 0x98),
        row("20F2", 0x99),
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
