package dev.stayfixed.verification;

import static dev.stayfixed.verification.EvidenceGrade.CYCLE_READINESS;
import static dev.stayfixed.verification.EvidenceGrade.DRIVEN;
import static dev.stayfixed.verification.EvidenceGrade.IN_USE_COUNTER;
import static dev.stayfixed.verification.EvidenceGrade.MIL_OFF;
import static dev.stayfixed.verification.EvidenceGrade.READINESS;
import static dev.stayfixed.verification.EvidenceGrade.STATUS_BYTE;
import static dev.stayfixed.verification.EvidenceGrade.TEST_RESULT;
import static dev.stayfixed.verification.MonitorReading.Says.DID_NOT_RUN;
import static dev.stayfixed.verification.MonitorReading.Says.FAILED;
import static dev.stayfixed.verification.MonitorReading.Says.RAN;
import static dev.stayfixed.verification.MonitorReading.Says.RAN_AND_PASSED;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Readiness;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.obd.TestResult;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Reads, for one fault, what each source says about its monitor in one drive; a source that says nothing is left out. */
record MonitorEvidence(RepairedFault fault, Knowledge before, DriveRecord drive) {

    /** Strongest first. */
    List<MonitorReading> in(Scan scan) {
        return Stream.of(
                        statusByte(scan),
                        testResult(scan),
                        cycleReadiness(scan),
                        inUseCounter(scan),
                        readiness(scan),
                        enablingConditions(),
                        milOff(scan),
                        driven())
                .flatMap(Optional::stream)
                .toList();
    }

    /** What a drive without any scan says. */
    List<MonitorReading> withoutScan() {
        return Stream.of(enablingConditions(), driven())
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<MonitorReading> statusByte(Scan scan) {
        return before.statusIn(scan, fault)
                .flatMap(status -> status.thisCycle().map(result -> reading(status, result)));
    }

    private MonitorReading reading(StatusByte status, StatusByte.CycleResult result) {
        String byteText = "status of %s is %02X: ".formatted(fault.code().text(), status.value());
        return switch (result) {
            case FAILED -> MonitorReading.of(FAILED, STATUS_BYTE, byteText + "its test failed in this driving cycle");
            case PASSED ->
                MonitorReading.of(
                        RAN_AND_PASSED,
                        STATUS_BYTE,
                        byteText + "its test completed in this driving cycle and did not fail");
            case NOT_COMPLETED ->
                MonitorReading.of(
                        DID_NOT_RUN, STATUS_BYTE, byteText + "its test was not completed in this driving cycle");
        };
    }

    private Optional<MonitorReading> testResult(Scan scan) {
        Set<Integer> ids = TestResult.monitorIdsOf(fault.code(), fault.ignition());
        List<TestResult> results = scan.testResults().stream()
                .filter(result -> ids.contains(result.monitorId()))
                .toList();
        List<TestResult> changed = results.stream()
                .filter(result -> !result.notRunYet())
                .filter(result -> before.before(result)
                        .filter(known -> !known.equals(result))
                        .isPresent())
                .toList();
        Optional<TestResult> outside =
                changed.stream().filter(result -> !result.isInsideLimits()).findFirst();
        if (outside.isPresent()) {
            return Optional.of(
                    MonitorReading.of(FAILED, TEST_RESULT, outside.get().describe() + ", outside its limits"));
        }
        if (!changed.isEmpty()) {
            return Optional.of(MonitorReading.of(
                    RAN_AND_PASSED,
                    TEST_RESULT,
                    changed.get(0).describe() + ", inside its limits and new in this drive"));
        }
        return !results.isEmpty() && results.stream().allMatch(TestResult::notRunYet)
                ? Optional.of(MonitorReading.of(
                        DID_NOT_RUN,
                        TEST_RESULT,
                        "monitor %02X stands at 0/0/0: not run since the clear"
                                .formatted(results.get(0).monitorId())))
                : Optional.empty();
    }

    private Optional<MonitorReading> cycleReadiness(Scan scan) {
        if (bitProvesNothing()) {
            return Optional.empty();
        }
        Optional<Readiness> cycle = scan.thisCycle().filter(c -> !c.supported().isEmpty());
        if (cycle.isEmpty() || takenInAnotherCycle(scan)) {
            return Optional.empty();
        }
        String group = fault.group().label();
        if (!cycle.get().supports(fault.group())) {
            return Optional.of(MonitorReading.of(
                    DID_NOT_RUN, CYCLE_READINESS, "the " + group + " monitor is not enabled in this driving cycle"));
        }
        return Optional.of(
                cycle.get().isComplete(fault.group())
                        ? MonitorReading.of(
                                RAN, CYCLE_READINESS, "the " + group + " monitor is complete in this driving cycle")
                        : MonitorReading.of(
                                DID_NOT_RUN,
                                CYCLE_READINESS,
                                "the " + group + " monitor is not complete in this driving cycle"));
    }

    /** PID $41 starts anew at key-on: a scan with the engine off after the drive speaks of the next cycle. */
    private static boolean takenInAnotherCycle(Scan scan) {
        var engineSpeed = scan.parameter(0x0C);
        var runTime = scan.parameter(0x1F);
        return engineSpeed.isPresent()
                && engineSpeed.getAsDouble() == 0
                && runTime.isPresent()
                && runTime.getAsDouble() == 0;
    }

    private Optional<MonitorReading> inUseCounter(Scan scan) {
        if (before.inUse().isEmpty() || scan.inUse().isEmpty()) {
            return Optional.empty();
        }
        Map<String, Integer> known = before.inUse().get().numerators(fault.code());
        return scan.inUse().get().numerators(fault.code()).entrySet().stream()
                .filter(now -> known.containsKey(now.getKey()) && now.getValue() > known.get(now.getKey()))
                .sorted(Map.Entry.comparingByKey())
                .findFirst()
                .map(now -> MonitorReading.of(
                        RAN,
                        IN_USE_COUNTER,
                        "in-use counter %s went up from %d to %d"
                                .formatted(now.getKey(), known.get(now.getKey()), now.getValue())));
    }

    private Optional<MonitorReading> readiness(Scan scan) {
        if (bitProvesNothing() || before.complete().isEmpty()) {
            return Optional.empty();
        }
        boolean wasComplete = before.complete().get().contains(fault.group());
        return scan.sinceClear()
                .filter(now -> !wasComplete && now.isComplete(fault.group()))
                .map(now -> MonitorReading.of(
                        RAN,
                        READINESS,
                        "readiness of the " + fault.group().label()
                                + " monitor turned complete since the last record"));
    }

    /**
     * On spark engines the continuous monitors are commonly shown complete from key-on; and the components bit covers hundreds of
     * tests on any engine.
     */
    private boolean bitProvesNothing() {
        return fault.group() == MonitorGroup.COMPONENTS
                || (fault.ignition() == Ignition.SPARK && fault.group().isContinuous());
    }

    /** Those of a whole drive and those of recorded signals have to be met together; one that was missed decides. */
    private Optional<MonitorReading> enablingConditions() {
        List<Finding> findings = Stream.concat(
                        fault.enablingConditions().stream().map(condition -> condition.heldIn(drive.summary())),
                        fault.recorded().stream().map(this::heldInSignals))
                .toList();
        if (findings.isEmpty()) {
            return Optional.empty();
        }
        Optional<Finding> missed = findings.stream().filter(Finding::isNo).findFirst();
        if (missed.isPresent()) {
            return Optional.of(MonitorReading.of(
                    DID_NOT_RUN, EvidenceGrade.ENABLING_CONDITIONS, missed.get().reason()));
        }
        return findings.stream().allMatch(Finding::isYes)
                ? Optional.of(MonitorReading.of(
                        RAN,
                        EvidenceGrade.ENABLING_CONDITIONS,
                        conditionWords() + " were met: "
                                + String.join(
                                        "; ",
                                        findings.stream().map(Finding::reason).toList())))
                : Optional.empty();
    }

    private String conditionWords() {
        return fault.recorded()
                .map(RecordedConditions::origin)
                .orElse(RecordedConditions.Origin.SERVICE_INFORMATION)
                .words();
    }

    private Finding heldInSignals(RecordedConditions conditions) {
        Finding found = drive.conditions().get(conditions.key());
        if (found == null) {
            return Finding.unknown("no signals of this drive were recorded");
        }
        return found.isNo() && conditions.origin() == RecordedConditions.Origin.TYPICAL_ADOPTED
                ? Finding.no(conditions.origin().words() + ": " + found.reason())
                : found;
    }

    private Optional<MonitorReading> milOff(Scan scan) {
        boolean wasOn = before.mil().orElse(false);
        boolean isOff = scan.sinceClear().filter(now -> !now.milCommanded()).isPresent();
        return wasOn && isOff
                ? Optional.of(MonitorReading.of(
                        RAN, MIL_OFF, "the MIL was on, is off now, and no code was cleared in between"))
                : Optional.empty();
    }

    private Optional<MonitorReading> driven() {
        return drive.summary().milOn().filter(on -> !on).map(off -> MonitorReading.of(RAN, DRIVEN, DRIVEN.words()));
    }
}
