package dev.stayfixed.obd;

import dev.stayfixed.reason.Kind;
import java.util.Optional;

/**
 * When the check of a circuit has something to look at. Sorted by us from the published titles of SAE J2012; the service information
 * of a vehicle overrides it.
 */
public enum CircuitKind implements Kind {
    /** Live whenever the engine runs: temperature, pressure and position sensors, injectors, coils, supplies. */
    ALWAYS_LIVE,
    /** Commanded on and off as the engine warms up and its load changes, or awake only when warm: heaters, valves, oxygen sensors. */
    SWITCHED,
    /** A signal only while the vehicle moves: wheel, vehicle and transmission speed. */
    SPEED,
    /** Messages between control units, sent from key-on. */
    MESSAGES;

    private static final CodeRanges SPEEDS = CodeRanges.of(
            "0500-0503 0715-0718 0720-0723 0791-0794 2158-2161 2745-2752 2765-2768 077A-077B C0030-C003F C0040-C0052");

    /** The heater monitor's own codes: what it needs is what the heater monitor needs. */
    private static final CodeRanges HEATER_MONITOR = CodeRanges.of("0135 0141 0147 0155 0161 0167");

    private static final CodeRanges SWITCHES = CodeRanges.of(
            "0001-0007 0010-0013 001A-001F 0020-0023 002A-002F 0030-0038 0042-0048 004A-004F 0050-0064 005E-005F 0066-0067"
                    + " 006E-006F 0075-0086 008C-008E 0090-0092 009B-009D 0130-0166 0213-0216 022A-022F 023A-023C 0243-0250 02E0-02E3"
                    + " 0380-0384 0403 0412-0419 0429 0439 0443-0449 044F 0458-0459 045A-045D 0475-0482 0484-0485 0487-0490"
                    + " 0498-0499 049F 04A1-04A3 0508-0511 0540-0543 0582-0588 0594-0599 0640 0645-0647 0660-0665 0670-0682 0691-0696"
                    + " 0740-0770 0773-0779 0785-0789 0795-0799 0803-0804 2008-2013 202A-202C 2047-2064 2088-2095 20A0-20A3 20B9-20DA"
                    + " 2141-2145 213A-213B 2200-2225 2231-2260 2294-2296 2400-2402 2418-2420 2425-2427 245A-245D 2600-2608 2611-2613"
                    + " 2626-2631 2645-2664 2706-2763 3401-3496");

    /** Empty for a code that is no circuit and no message, and for those of the oxygen sensor heater monitor. */
    public static Optional<CircuitKind> of(TroubleCode code) {
        if (SPEEDS.contain(code)) {
            return Optional.of(SPEED);
        }
        return switch (CodeNature.of(code)) {
            case CIRCUIT ->
                HEATER_MONITOR.contain(code)
                        ? Optional.empty()
                        : Optional.of(SWITCHES.contain(code) ? SWITCHED : ALWAYS_LIVE);
            case NETWORK -> Optional.of(MESSAGES);
            case RANGE_PERFORMANCE, SYSTEM, CONTROL_UNIT, UNKNOWN -> Optional.empty();
        };
    }
}
