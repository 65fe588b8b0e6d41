package dev.stayfixed.obd;

import static dev.stayfixed.obd.MonitorGroup.*;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;

/**
 * Which readiness group a code belongs to, and for which codes the group's bit stands. The standard prints no such table: this one
 * follows the published descriptions of the generic powertrain codes of SAE J2012. The maker's data override it. In neither public list, from memory: P207F, P20E8, P20E9, P20F4, P20F5, P229E to P22A5, P240A to P240C
 * and P2448 to P2451.
 *
 * <p>A bit is complete when the system's own monitors have run to a decision. Beside those the ranges hold the circuits, the sensors
 * and the relays of the system: their checks are comprehensive components (13 CCR 1968.2 (e)(15), from memory), run at other times,
 * and the bit says nothing about them, neither that they ran nor that they did not.
 */
final class CodeGroups {

    /**
     * One group.
     *
     * @param codes all that belong to it
     * @param decided those that the group's own monitors decide
     */
    private record Row(MonitorGroup group, CodeRanges codes, CodeRanges decided) {}

    private static final Row[] ROWS = {
        row(
                CATALYST,
                "0420-0422 0425-0428 042A-042D 0430-0432 0435-0438 043A-043D 046A-046B 2423-2424",
                "0420-0422 0430-0432 2423-2424"),
        row(HEATED_CATALYST, "0423-0424 0429 0433-0434 0439", "0423-0424 0433-0434"),
        // Not decided: P0456, the very small leak, because makers differ in whether its test belongs to the bit, and
        // likewise
        // P043E and P043F, the reference orifice of that test.
        row(
                EVAPORATIVE_SYSTEM,
                "043E-043F 0440-0459 0465-0469 0496-0499 2024-2028 2400-2412 240A-240C 2418-2422 2450-2451",
                "0440-0442 0455 0457 0496-0497 2421-2422"),
        row(SECONDARY_AIR, "0410-0419 044F 0491-0492 2257-2260 2430-2449", "0410-0411 0491-0492 2440-2449"),
        row(
                OXYGEN_SENSOR,
                "0040-0041 0130-0134 0136-0140 013A-013F 0142-0146 014A-014F 0150-0154 0156-0160 015A-015D 0162-0166 2195-2198"
                        + " 2237-2256 2270-2278 2297-2298 2414-2417 2626-2631 2A00-2A05",
                "0133 0139 013A-013F 0145 014A-014F 0153 0159 015A-015D 0165 2195-2198 2270-2278 2297-2298 2A00-2A05"),
        // Decided: the heater monitor is the very test of P0135 and its kin (does the heater draw its current), and of
        // the heater
        // resistance. The control circuit (P0030 to P0032 and kin) is watched at the driver stage of the unit, all the
        // time.
        row(
                OXYGEN_SENSOR_HEATER,
                "0030-0032 0036-0038 0042-0044 0050-0064 0135 0141 0147 0155 0161 0167 2231-2236",
                "0053-0055 0059-0061 0135 0141 0147 0155 0161 0167"),
        row(
                EGR_VVT,
                "0400-0409 040A-040F 041A-041E 042E-042F 044A-044E 045A-045F 046C-046F 0486-0490 049A-049E 2141-2145 213A-213B 2413"
                        + " 2425-2427 2457 245A-245D 000A-000D 0010-0015 001A-001F 0020-0025 002A-002F 003C-003F 005A-005D 2088-2095",
                "0400-0402 042E-042F 045E-045F 049A-049C 2413 2457 000A-000D 0011-0012 0014-0015 0021-0022 0024-0025 003C-003F"
                        + " 005A-005D"),
        row(MISFIRE, "0300-0314 0316 0363", "0300-0314 0316 0363"),
        row(
                FUEL_SYSTEM,
                "0170-0175 2096-2099 2177-2180 2187-2194 219A-219F",
                "0170-0175 2096-2099 2177-2180 2187-2194 219A-219F"),
        row(BOOST_PRESSURE, "0234-0250 0299 02CA-02CB 2261-2263 2562-2566", "0234 0299 02CA-02CB 2263"),
        // Not decided: the NOx sensors, P2200 to P2225 and P229E to P22A5, which may report under the exhaust gas
        // sensor instead.
        row(
                NOX_AFTERTREATMENT,
                "2000-2001 202A-202F 2037-2064 203A-203F 204A-204F 205A-205F 207F 209A-209E 20A0-20A5 20B9-20C8 20E6-20E9 20EE-20EF"
                        + " 20F2-20F5 2200-2225 229E-22A5",
                "2000-2001 204F 205F 207F 20E6-20E9 20EE-20EF 20F2-20F5"),
        row(PM_FILTER, "2002-2003", "2002-2003"),
    };

    /** A spark engine has no boost and no NOx bit, and its particulate filter has a name of its own. Our reading. */
    private static final Map<MonitorGroup, MonitorGroup> ON_SPARK =
            Map.of(BOOST_PRESSURE, COMPONENTS, NOX_AFTERTREATMENT, COMPONENTS, PM_FILTER, GASOLINE_PARTICULATE_FILTER);

    /** The bits of a compression engine that stand where a spark engine has others. Our reading. */
    private static final Map<MonitorGroup, MonitorGroup> ON_COMPRESSION = Map.of(
            CATALYST, NMHC_CATALYST,
            HEATED_CATALYST, COMPONENTS,
            EVAPORATIVE_SYSTEM, COMPONENTS,
            SECONDARY_AIR, COMPONENTS,
            OXYGEN_SENSOR, EXHAUST_GAS_SENSOR,
            OXYGEN_SENSOR_HEATER, EXHAUST_GAS_SENSOR);

    private CodeGroups() {}

    private static Row row(MonitorGroup group, String codes, String decided) {
        return new Row(group, CodeRanges.of(codes), CodeRanges.of(decided));
    }

    private static Optional<Row> rowOf(TroubleCode code) {
        return Arrays.stream(ROWS).filter(row -> row.codes().contain(code)).findFirst();
    }

    static MonitorGroup groupOf(TroubleCode code, Ignition ignition) {
        MonitorGroup group = rowOf(code).map(Row::group).orElse(COMPONENTS);
        return (ignition == Ignition.SPARK ? ON_SPARK : ON_COMPRESSION).getOrDefault(group, group);
    }

    /** Also empty-handed for a code that stands in no row: nothing is known of it. */
    static boolean isDecidedByItsGroup(TroubleCode code) {
        return rowOf(code).filter(row -> row.decided().contain(code)).isPresent();
    }
}
