package dev.stayfixed.simulator;

import java.util.Set;

/**
 * One fault code and the test that decides it.
 *
 * @param code as in SAE J2012, "P0420"
 * @param trips failing monitored driving cycles until it is confirmed, 1 or 2
 * @param runs when the test reaches a decision
 * @param shows when a fault that is there makes the test fail: the same moment, but for misfire and fuel system
 * @param record its service $06 record
 * @param ratio whether 13 CCR 1968.2 sets a minimum in-use ratio for the monitor: (d)(2.5.2) treats its permanent code differently
 * @param similar whether pending code and MIL go only under similar conditions, 13 CCR 1968.2 (e)(3.4) and (e)(6.4)
 * @param blockers codes that keep this test from running while they are pending or command the MIL
 */
record MonitoredCode(
        String code,
        Group group,
        int trips,
        Enabling runs,
        Enabling shows,
        Record06 record,
        boolean ratio,
        boolean similar,
        Set<String> blockers) {

    /**
     * Identifiers and limits of SAE J1979 service $06 on CAN; limits as sent, unsigned.
     *
     * @param monitor OBDMID; 0 where the code has no test result
     */
    record Record06(int monitor, int test, int scaling, int min, int max) {
        static final Record06 NONE = new Record06(0, 0, 0, 0, 0);
    }

    static MonitoredCode tracked(String code, Group group, Enabling runs, Record06 record, String... blockers) {
        return new MonitoredCode(code, group, 2, runs, runs, record, true, false, Set.of(blockers));
    }

    static MonitoredCode plain(String code, Group group, int trips, Enabling runs, Record06 record) {
        return new MonitoredCode(code, group, trips, runs, runs, record, false, false, Set.of());
    }

    static MonitoredCode similar(String code, Group group, Enabling runs, Enabling shows, Record06 record) {
        return new MonitoredCode(code, group, 2, runs, shows, record, false, true, Set.of());
    }
}
