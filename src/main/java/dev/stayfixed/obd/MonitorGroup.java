package dev.stayfixed.obd;

import dev.stayfixed.reason.Kind;

/** A readiness monitor of SAE J1979 service $01 PID $01 and $41: the unit in which readiness is reported. */
public enum MonitorGroup implements Kind {
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

    private static final CodeRanges IMBALANCE = CodeRanges.of("219A-219F");

    /**
     * Misfire and fuel-system faults are confirmed and erased only under conditions similar to those of the failure; the imbalance of
     * the air-fuel ratio between cylinders follows the ordinary rule. Source: 13 CCR 1968.2 (e)(3.4), (e)(6.4) and its opening.
     */
    public boolean needsSimilarConditions(TroubleCode code) {
        return this == MISFIRE || (this == FUEL_SYSTEM && !IMBALANCE.contain(code));
    }

    /**
     * Readiness since the clear (PID $01) and in this cycle (PID $41) of the group to which the code belongs reach this very code: a
     * complete bit says that its test has run to a decision, an incomplete one that it has not passed. They do not for circuits but
     * the heater monitor's own, for the very small leak, for components, and for the continuous monitors of spark engines, which are
     * commonly shown complete from key-on.
     */
    public static boolean readinessCovers(TroubleCode code, Ignition ignition) {
        return of(code, ignition).bitReaches(code, ignition);
    }

    /**
     * The same for the group that a job names: where the service information puts the code into another group than the published
     * descriptions do, or where those tell none, as for a maker's own code, the bit reaches it unless it is known to be a circuit.
     */
    public boolean bitReaches(TroubleCode code, Ignition ignition) {
        if (this == COMPONENTS || (ignition == Ignition.SPARK && isContinuous())) {
            return false;
        }
        // P0135-13: the unit names the open circuit itself, not the monitor of the heater.
        if (code.failureType().orElse(0) != 0 && CodeNature.of(code) == CodeNature.CIRCUIT) {
            return false;
        }
        return of(code, ignition) == this
                ? CodeGroups.isDecidedByItsGroup(code)
                : CodeNature.of(code) != CodeNature.CIRCUIT;
    }
}
