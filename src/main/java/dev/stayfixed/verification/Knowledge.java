package dev.stayfixed.verification;

import dev.stayfixed.obd.InUseCounters;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.MonitorState;
import dev.stayfixed.obd.Readiness;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.Scan.Presence;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.obd.TestResult;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
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
 * @param listsUntested a $19 answer has listed a code whose test had not run, so what the unit leaves out has run
 * @param complete groups known to be complete since the clear; empty where no scan has said
 * @param tests latest result by OBDMID and TID
 * @param testsZeroed a test not in {@code tests} is known to be 0/0/0, because codes were cleared
 */
record Knowledge(
        Presence pending,
        Presence confirmed,
        Presence permanent,
        Optional<StatusByte> status,
        boolean listsUntested,
        Optional<Set<MonitorGroup>> complete,
        Map<Integer, TestResult> tests,
        boolean testsZeroed,
        Optional<InUseCounters> inUse,
        Counters counters,
        Optional<Boolean> mil) {

    /** 13 CCR 1968.2 (d)(2.3), as makers print it; the counter itself stands at 255 and does not wrap. */
    private static final int ERASURE_WARM_UPS = 40;

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
                listsUntested,
                Optional.of(Set.of()),
                Map.of(),
                true,
                inUse,
                counters.cleared(),
                Optional.of(false));
    }

    /** Cleared at the very place where the last scan was taken. */
    Knowledge clearedHere() {
        return new Knowledge(
                pending,
                confirmed,
                permanent,
                status,
                listsUntested,
                complete,
                tests,
                testsZeroed,
                inUse,
                counters.clearedHere(),
                mil);
    }

    /** The same, brought up to date by a scan; what the scan does not say stays as it was known. */
    Knowledge after(Scan scan, RepairedFault fault) {
        return new Knowledge(
                newer(scan.pending(fault.code()), pending),
                newer(scan.confirmed(fault.code()), confirmed),
                newer(scan.permanent(fault.code()), permanent),
                statusIn(scan, fault).or(() -> status),
                listsUntested || scan.listsUntestedCodes(),
                scan.sinceClear().map(Knowledge::completeGroups).or(() -> complete),
                merged(scan),
                testsZeroed,
                scan.inUse().or(() -> inUse),
                counters.after(scan),
                scan.lamp().or(() -> mil));
    }

    /** The control unit was exchanged or reprogrammed: its counters are not those that were read before. */
    Knowledge ofAnotherUnit() {
        return new Knowledge(
                pending,
                confirmed,
                permanent,
                Optional.empty(),
                listsUntested,
                Optional.empty(),
                Map.of(),
                false,
                Optional.empty(),
                Counters.UNKNOWN,
                mil);
    }

    /** Status bit 5 was known to be 0: read so, or nothing read since a clear. */
    boolean knownNotFailedSinceClear() {
        return status.isPresent() ? !status.get().failedSinceClear() : testsZeroed && pending == Presence.ABSENT;
    }

    /**
     * The status byte that a scan states for the code, or states by leaving it out: on a unit that was seen to list untested codes, and
     * where PID $41 of the same scan does not say that the monitor has not run.
     */
    Optional<StatusByte> statusIn(Scan scan, RepairedFault fault) {
        Optional<StatusByte> stated = scan.status(fault.code());
        boolean speaksByLeavingOut = listsUntested || scan.listsUntestedCodes();
        boolean notInCycle = fault.isReachedByReadiness()
                && scan.thisCycle(fault.group())
                        .filter(state -> state == MonitorState.INCOMPLETE)
                        .isPresent();
        return stated.isPresent() || !speaksByLeavingOut || notInCycle ? stated : scan.unlistedStatus(fault.code());
    }

    /** The MIL was on for this very code, as far as was read. */
    boolean lit() {
        return mil.orElse(false) && confirmed == Presence.PRESENT;
    }

    /** The signs that codes were cleared or memory was lost between what is known and this scan. */
    List<Reason> lossesTo(Scan scan, RepairedFault fault) {
        List<Reason> losses = new ArrayList<>(counters.fallsTo(Counters.read(scan)));
        Part code = Part.verbatim(fault.code().text());
        scan.sinceClear()
                .flatMap(this::fellBack)
                .map(group -> Reason.of(StepReason.READINESS_FELL, group))
                .ifPresent(losses::add);
        boolean wasCompleted = status.filter(s -> !s.notCompletedSinceClear()).isPresent();
        if (wasCompleted
                && statusIn(scan, fault)
                        .filter(StatusByte::notCompletedSinceClear)
                        .isPresent()) {
            losses.add(Reason.of(StepReason.STATUS_NO_LONGER_COMPLETED, code));
        } else if (status.filter(StatusByte::failedSinceClear).isPresent()
                && scan.status(fault.code())
                        .filter(now -> !now.failedSinceClear())
                        .isPresent()) {
            losses.add(Reason.of(StepReason.STATUS_NO_LONGER_FAILED, code));
        }
        boolean noneCounted = scan.sinceClear()
                .filter(now -> !now.milCommanded() && now.confirmedCount() == 0)
                .isPresent();
        Presence stored = scan.confirmed(fault.code());
        boolean gone = stored == Presence.ABSENT || (stored == Presence.UNKNOWN && noneCounted);
        if (lit() && gone && !mayHaveForgotten(scan)) {
            losses.add(Reason.of(StepReason.CODE_GONE, code));
        }
        return losses;
    }

    /** Forty warm-up cycles have passed, as far as their counter says. */
    private boolean mayHaveForgotten(Scan scan) {
        return counters.warmUpsTo(Counters.read(scan)) >= ERASURE_WARM_UPS;
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
