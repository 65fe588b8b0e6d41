package dev.stayfixed.simulator;

/** Readiness groups: where their bits stand in SAE J1979 PID $01 and $41, and the names of their service $09 counters. */
enum Group {
    MISFIRE(0),
    FUEL_SYSTEM(1),
    COMPONENTS(2),
    CATALYST(0, "CATCOMP1", "CATCOND1"),
    EVAP(2, "EVAPCOMP", "EVAPCOND"),
    O2_SENSOR(5, "O2SCOMP1", "O2SCOND1"),
    O2_HEATER(6),
    EGR_VVT(7, "EGRCOMP", "EGRCOND"),
    NMHC_CATALYST(0, "HCCATCOMP", "HCCATCOND"),
    NOX(1, "NCATCOMP", "NCATCOND"),
    BOOST(3, "BPCOMP", "BPCOND"),
    EXHAUST_SENSOR(5, "EGSCOMP", "EGSCOND"),
    PM_FILTER(6, "PMCOMP", "PMCOND");

    private final int bit;
    private final String numerator;
    private final String denominator;

    Group(int bit) {
        this(bit, "", "");
    }

    Group(int bit, String numerator, String denominator) {
        this.bit = bit;
        this.numerator = numerator;
        this.denominator = denominator;
    }

    /** Bit in byte B (continuous groups) or in bytes C and D. */
    int bit() {
        return bit;
    }

    boolean isContinuous() {
        return compareTo(COMPONENTS) <= 0;
    }

    /** Name of the service $09 numerator, or "" where the list has none. */
    String numerator() {
        return numerator;
    }

    String denominator() {
        return denominator;
    }
}
