package dev.stayfixed.obd;

import static dev.stayfixed.obd.MonitorGroup.*;

import java.util.Arrays;
import java.util.Map;

/**
 * Which readiness group a code belongs to. The standard prints no such table: this one follows the published descriptions of the
 * generic powertrain codes of SAE J2012. The maker's data override it.
 */
final class CodeGroups {

    private record Row(MonitorGroup group, CodeRanges codes) {}

    private static final Row[] ROWS = {
        row(CATALYST, "0420-0422 0425-0428 0430-0432 0435-0438 2423-2424"),
        row(HEATED_CATALYST, "0423-0424 0429 0433-0434 0439"),
        row(EVAPORATIVE_SYSTEM, "0440-0459 0465-0469 0496-0499 2024-2028 2400-2412 2418-2422"),
        row(SECONDARY_AIR, "0410-0419 0491-0492 2257-2260 2430-2447"),
        row(
                OXYGEN_SENSOR,
                "0040-0041 0130-0134 0136-0140 0142-0146 0150-0154 0156-0160 0162-0166 2195-2198 2237-2256 2270-2278"
                        + " 2297-2298 2414-2417 2626-2631 2A00-2A05"),
        row(OXYGEN_SENSOR_HEATER, "0030-0032 0036-0038 0042-0044 0050-0064 0135 0141 0147 0155 0161 0167 2231-2236"),
        row(EGR_VVT, "0400-0409 0486-0490 2141-2145 2413 2425-2427 0010-0015 0020-0025 2088-2095"),
        row(MISFIRE, "0300-0314 0316 0363"),
        row(FUEL_SYSTEM, "0170-0175 2096-2099 2177-2180 2187-2194"),
        row(BOOST_PRESSURE, "0234-0250 0299 2261-2263 2562-2566"),
        row(
                NOX_AFTERTREATMENT,
                "2000-2001 2037-2064 2200-2225 20EE-20EF"), // 20EE and 20EF, catalyst efficiency: from memory
        row(PM_FILTER, "2002-2003"),
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

    private static Row row(MonitorGroup group, String ranges) {
        return new Row(group, CodeRanges.of(ranges));
    }

    static MonitorGroup groupOf(TroubleCode code, Ignition ignition) {
        MonitorGroup group = Arrays.stream(ROWS)
                .filter(row -> row.codes().contain(code))
                .map(Row::group)
                .findFirst()
                .orElse(COMPONENTS);
        return (ignition == Ignition.SPARK ? ON_SPARK : ON_COMPRESSION).getOrDefault(group, group);
    }
}
