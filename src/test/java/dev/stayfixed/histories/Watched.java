package dev.stayfixed.histories;

import java.util.Arrays;

/**
 * The fault of a record, and what the car's answers can say of its monitor.
 *
 * @param owner the control unit that watches it, as its CAN identifier
 * @param trips failed trips in a row until it is confirmed
 * @param groupBit bit of byte C and D of PIDs $01 and $41; -1 where no readiness bit covers it
 * @param bitProves whether that bit says anything of this very monitor: not for circuits, components and the very small leak
 * @param numerator place of its own numerator among the counters of $09 08; -1 where it has none or shares one
 * @param monitorId OBDMID of its service $06 result; -1 where none
 */
record Watched(String code, String owner, int trips, int groupBit, boolean bitProves, int numerator, int monitorId) {

    static final String ENGINE = "7E8";
    static final String SECOND = "7E9";

    static final Watched CATALYST = new Watched("P0420", ENGINE, 2, 0, true, 2, 0x21);
    static final Watched OXYGEN_SENSOR = new Watched("P0133", ENGINE, 2, 5, true, -1, 0x01);
    static final Watched EGR_FLOW = new Watched("P0401", ENGINE, 2, 7, true, -1, -1);
    static final Watched CATALYST_ONE_TRIP = new Watched("P0420", ENGINE, 1, 0, true, 2, 0x21);
    static final Watched VERY_SMALL_LEAK = new Watched("P0456", ENGINE, 2, 2, false, -1, -1);
    static final Watched CIRCUIT = new Watched("P0118", ENGINE, 2, -1, false, -1, -1);
    static final Watched CIRCUIT_ONE_TRIP = new Watched("P0118", ENGINE, 1, -1, false, -1, -1);
    static final Watched GEARBOX = new Watched("P0741", SECOND, 2, -1, false, -1, -1);
    static final Watched NETWORK = new Watched("U0101", ENGINE, 2, -1, false, -1, -1);
    static final Watched CHASSIS = new Watched("C0035", SECOND, 2, -1, false, -1, -1);

    /** Codes of body, chassis and network are watched by units that the record may never have met. */
    boolean isPowertrain() {
        return code.startsWith("P");
    }

    /** SAE J2012: two bits for the letter, then the four digits. */
    static int value(String code) {
        return "PCBU".indexOf(code.charAt(0)) << 14 | Integer.parseInt(code.substring(1), 16);
    }

    @Override
    public String toString() {
        return "%s of unit %s, %d trip%s".formatted(code, owner, trips, trips == 1 ? "" : "s");
    }

    static Watched[] all() {
        return Arrays.stream(new Watched[] {
                    CATALYST,
                    OXYGEN_SENSOR,
                    EGR_FLOW,
                    CATALYST_ONE_TRIP,
                    VERY_SMALL_LEAK,
                    CIRCUIT,
                    CIRCUIT_ONE_TRIP,
                    GEARBOX,
                    NETWORK,
                    CHASSIS
                })
                .toArray(Watched[]::new);
    }
}
