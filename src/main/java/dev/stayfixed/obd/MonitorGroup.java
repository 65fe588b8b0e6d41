package dev.stayfixed.obd;

/** A readiness monitor of SAE J1979 service $01 PID $01 and $41: the unit in which readiness is reported. */
public enum MonitorGroup {
    MISFIRE("misfire"),
    FUEL_SYSTEM("fuel system"),
    COMPONENTS("comprehensive components"),
    CATALYST("catalyst"),
    HEATED_CATALYST("heated catalyst"),
    EVAPORATIVE_SYSTEM("evaporative system"),
    SECONDARY_AIR("secondary air"),
    GASOLINE_PARTICULATE_FILTER("gasoline particulate filter"),
    OXYGEN_SENSOR("oxygen sensor"),
    OXYGEN_SENSOR_HEATER("oxygen sensor heater"),
    EGR_VVT("EGR or variable valve timing"),
    NMHC_CATALYST("NMHC catalyst"),
    NOX_AFTERTREATMENT("NOx aftertreatment"),
    BOOST_PRESSURE("boost pressure"),
    EXHAUST_GAS_SENSOR("exhaust gas sensor"),
    PM_FILTER("PM filter");

    private final String label;

    MonitorGroup(String label) {
        this.label = label;
    }

    /** The name in plain trade words, for people. */
    public String label() {
        return label;
    }

    /** Misfire, fuel system and components watch all the time: the three monitors of byte B. */
    public boolean isContinuous() {
        return this == MISFIRE || this == FUEL_SYSTEM || this == COMPONENTS;
    }

    /**
     * The monitor has to keep a minimum in-use ratio, so that after a clear its permanent code goes after one driving cycle with a
     * pass and no fail; the others also need the minimum-conditions driving cycle. Source: 13 CCR 1968.2 (d)(2.5.2)(A) and (B); that
     * it is all groups but the continuous ones is from memory.
     */
    public boolean hasMinimumRatio() {
        return !isContinuous();
    }

    /** The group whose readiness bit covers this code; codes that no group claims are components. */
    public static MonitorGroup of(TroubleCode code, Ignition ignition) {
        return CodeGroups.groupOf(code, ignition);
    }
}
