package dev.stayfixed.verification;

import dev.stayfixed.obd.InUseCounters;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Readiness;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.Scan.Presence;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.obd.TestResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What is known of the control unit's memory before a drive, as far as it concerns one fault: what a later scan is held against.
 *
 * @param status as last read; empty where nothing was read since a clear
 * @param listed a $19 answer of this car has listed the code at some time, so the control unit knows it
 * @param complete groups known to be complete since the clear; empty where no scan has said
 * @param tests latest result by OBDMID and TID
 * @param testsZeroed a test not in {@code tests} is known to be 0/0/0, because codes were cleared
 */
record Knowledge(
        Presence pending,
        Presence confirmed,
        Presence permanent,
        Optional<StatusByte> status,
        boolean listed,
        Optional<Set<MonitorGroup>> complete,
        Map<Integer, TestResult> tests,
        boolean testsZeroed,
        Optional<InUseCounters> inUse,
        Counters counters,
        Optional<Boolean> mil) {

    static final Knowledge NOTHING = new Knowledge(
            Presence.UNKNOWN,
            Presence.UNKNOWN,
            Presence.UNKNOWN,
            Optional.empty(),
            false,
            Optional.empty(),
            Map.of(),
            false,
            Optional.empty(),
            Counters.UNKNOWN,
            Optional.empty());

    /** Service $04 erases codes, readiness, results and counters; permanent codes and in-use counters stay (SAE J1979). */
    Knowledge cleared() {
        return new Knowledge(
                Presence.ABSENT,
                Presence.ABSENT,
                permanent,
                Optional.empty(),
                listed,
                Optional.of(Set.of()),
                Map.of(),
                true,
                inUse,
                counters.cleared(),
                Optional.of(false));
    }

    /** The same, brought up to date by a scan; what the scan does not say stays as it was known. */
    Knowledge after(Scan scan, RepairedFault fault) {
        return new Knowledge(
                newer(scan.pending(fault.code()), pending),
                newer(scan.confirmed(fault.code()), confirmed),
                newer(scan.permanent(fault.code()), permanent),
                statusIn(scan, fault).or(() -> status),
                listed || scan.status(fault.code()).isPresent(),
                scan.sinceClear().map(Knowledge::completeGroups).or(() -> complete),
                merged(scan),
                testsZeroed,
                scan.inUse().or(() -> inUse),
                counters.after(scan),
                scan.sinceClear().map(Readiness::milCommanded).or(() -> mil));
    }

    /**
     * After a drive was scored: a baseline that its scans did not renew may hide the same run of the monitor again, so it is
     * forgotten.
     */
    Knowledge scored(boolean readinessRead, boolean inUseRead, boolean testsRead) {
        return new Knowledge(
                pending,
                confirmed,
                permanent,
                status,
                listed,
                readinessRead ? complete : Optional.empty(),
                testsRead ? tests : Map.of(),
                testsRead && testsZeroed,
                inUseRead ? inUse : Optional.empty(),
                counters,
                mil);
    }

    /** Status bit 5 was known to be 0: read so, or nothing read since a clear. */
    boolean knownNotFailedSinceClear() {
        return status.isPresent() ? !status.get().failedSinceClear() : testsZeroed && pending == Presence.ABSENT;
    }

    /** The status byte that a scan states for the code, or states by leaving out a code that the control unit knows. */
    Optional<StatusByte> statusIn(Scan scan, RepairedFault fault) {
        Optional<StatusByte> stated = scan.status(fault.code());
        return stated.isPresent() || !listed ? stated : scan.unlistedStatus(fault.code());
    }

    /** The signs, each in words, that codes were cleared or memory was lost between what is known and this scan. */
    List<String> lossesTo(Scan scan, RepairedFault fault) {
        List<String> losses = new ArrayList<>(counters.fallsTo(Counters.read(scan)));
        scan.sinceClear()
                .flatMap(this::fellBack)
                .map(group -> "readiness of the " + group.label() + " monitor fell back to not complete")
                .ifPresent(losses::add);
        boolean wasCompleted = status.filter(s -> !s.notCompletedSinceClear()).isPresent();
        if (wasCompleted
                && statusIn(scan, fault)
                        .filter(StatusByte::notCompletedSinceClear)
                        .isPresent()) {
            losses.add("the status byte of " + fault.code().text()
                    + " says not completed since the clear, and it had been");
        }
        return losses;
    }

    private Optional<MonitorGroup> fellBack(Readiness now) {
        return complete.stream()
                .flatMap(Set::stream)
                .filter(group -> !group.isContinuous() && now.incomplete().contains(group))
                .min(Comparator.naturalOrder());
    }

    /** The result of this test before; empty where it is not known. */
    Optional<TestResult> before(TestResult now) {
        TestResult known = tests.get(key(now));
        if (known != null) {
            return Optional.of(known);
        }
        return testsZeroed
                ? Optional.of(new TestResult(now.monitorId(), now.testId(), now.scalingId(), 0, 0, 0))
                : Optional.empty();
    }

    private Map<Integer, TestResult> merged(Scan scan) {
        if (scan.testResults().isEmpty()) {
            return tests;
        }
        Map<Integer, TestResult> all = new HashMap<>(tests);
        scan.testResults().forEach(result -> all.put(key(result), result));
        return Map.copyOf(all);
    }

    private static int key(TestResult result) {
        return result.monitorId() << 8 | result.testId();
    }

    private static Presence newer(Presence read, Presence known) {
        return read == Presence.UNKNOWN ? known : read;
    }

    private static Set<MonitorGroup> completeGroups(Readiness readiness) {
        Set<MonitorGroup> complete = new HashSet<>(readiness.supported());
        complete.removeAll(readiness.incomplete());
        return Set.copyOf(complete);
    }
}
