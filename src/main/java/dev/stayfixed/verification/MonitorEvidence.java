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
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.obd.InUseCounters;
import dev.stayfixed.obd.MonitorState;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.obd.TestResult;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.verification.UnitState.Trip;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Reads, for one fault, what each source says about its monitor in one drive; a source that says nothing is left out.
 *
 * @param before what is known up to this reading
 */
record MonitorEvidence(RepairedFault fault, Knowledge before, DriveRecord drive) {

    /** SAE J1979-DA: misfires counted in this cycle, and their average over ten; a count at rest is no result. From memory. */
    private static final Set<Integer> MISFIRE_COUNTS = Set.of(0x0B, 0x0C);

    private static final DriveRecord NO_DRIVE =
            new DriveRecord("", Instant.EPOCH, Optional.empty(), DriveSummary.UNKNOWN, false, List.of());

    /** Of the owner's answers in the drive or at its end, strongest first. */
    List<MonitorReading> in(Scan scan) {
        return Stream.of(
                        statusByte(scan),
                        testResult(scan),
                        cycleReadiness(scan),
                        inUseCounter(scan),
                        readiness(scan),
                        milOff(scan),
                        enablingConditions(),
                        driven())
                .flatMap(Optional::stream)
                .toList();
    }

    /** What speaks of the present cycle only. */
    List<MonitorReading> ofThisCycle(Scan scan) {
        return Stream.of(statusByte(scan), cycleReadiness(scan))
                .flatMap(Optional::stream)
                .toList();
    }

    /** Of the owner's answers with the key on and the engine not started: what belongs to this cycle says nothing of the drive. */
    List<MonitorReading> atKeyOn(Scan scan) {
        return Stream.of(inUseCounter(scan), readiness(scan), milOff(scan), enablingConditions(), driven())
                .flatMap(Optional::stream)
                .toList();
    }

    /** Of the owner's answers in a driving cycle that nobody recorded. */
    static List<MonitorReading> inCycle(RepairedFault fault, Knowledge before, Scan scan) {
        return new MonitorEvidence(fault, before, NO_DRIVE).in(scan);
    }

    /** Of the owner's answers with no drive about them. */
    static List<MonitorReading> atRest(RepairedFault fault, Knowledge before, Scan scan) {
        MonitorEvidence evidence = new MonitorEvidence(fault, before, NO_DRIVE);
        return Stream.of(evidence.inUseCounter(scan), evidence.readiness(scan), evidence.milOff(scan))
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
        Part code = Part.verbatim(fault.code().text());
        Part value = Part.hex(status.value());
        return switch (result) {
            case FAILED ->
                MonitorReading.of(
                        FAILED,
                        STATUS_BYTE,
                        Reason.of(TripReason.STATUS_FAILED, code, value),
                        state -> state.cycle() == Trip.FAILED);
            case PASSED ->
                MonitorReading.of(
                        RAN_AND_PASSED,
                        STATUS_BYTE,
                        Reason.of(TripReason.STATUS_PASSED, code, value),
                        state -> state.cycle() == Trip.PASSED);
            case NOT_COMPLETED ->
                MonitorReading.of(
                        DID_NOT_RUN,
                        STATUS_BYTE,
                        Reason.of(TripReason.STATUS_NOT_COMPLETED, code, value),
                        state -> state.cycle() == Trip.NOT_RUN);
        };
    }

    private Optional<MonitorReading> testResult(Scan scan) {
        Set<Integer> ids = TestResult.monitorIdsOf(fault.code(), fault.ignition());
        List<TestResult> results = scan.testResults().stream()
                .filter(result -> ids.contains(result.monitorId()))
                .toList();
        List<TestResult> changed = results.stream()
                .filter(result -> !result.notRunYet() && !isCountAtRest(result))
                .filter(result -> before.before(result)
                        .filter(known -> !known.equals(result))
                        .isPresent())
                .toList();
        Optional<TestResult> outside =
                changed.stream().filter(result -> !result.isInsideLimits()).findFirst();
        if (outside.isPresent()) {
            return Optional.of(MonitorReading.of(
                    FAILED,
                    TEST_RESULT,
                    Reason.of(TripReason.RESULT_OUTSIDE, outside.get().said()),
                    state -> state.tally().failed()));
        }
        if (!changed.isEmpty()) {
            return Optional.of(MonitorReading.of(
                    RAN_AND_PASSED,
                    TEST_RESULT,
                    Reason.of(TripReason.RESULT_INSIDE, changed.get(0).said()),
                    state -> state.tally().ran()));
        }
        return !results.isEmpty() && results.stream().allMatch(TestResult::notRunYet)
                ? Optional.of(MonitorReading.of(
                        DID_NOT_RUN,
                        TEST_RESULT,
                        Reason.of(
                                TripReason.RESULT_NOT_RUN,
                                Part.hex(results.get(0).monitorId())),
                        state -> true))
                : Optional.empty();
    }

    private static boolean isCountAtRest(TestResult result) {
        return result.isMisfireCount() && MISFIRE_COUNTS.contains(result.testId()) && result.rawValue() == 0;
    }

    private Optional<MonitorReading> cycleReadiness(Scan scan) {
        if (!fault.isReachedByReadiness()) {
            return Optional.empty();
        }
        boolean nothingEnabled =
                scan.thisCycle().filter(cycle -> cycle.supported().isEmpty()).isPresent();
        return scan.thisCycle(fault.group()).filter(state -> !nothingEnabled).map(state -> switch (state) {
            case NOT_SUPPORTED -> notInCycle(TripReason.CYCLE_NOT_ENABLED);
            case INCOMPLETE -> notInCycle(TripReason.CYCLE_NOT_COMPLETE);
            case COMPLETE ->
                MonitorReading.of(
                        RAN,
                        CYCLE_READINESS,
                        Reason.of(TripReason.CYCLE_COMPLETE, fault.group()),
                        unit -> unit.cycle() != Trip.NOT_RUN);
        });
    }

    private MonitorReading notInCycle(TripReason why) {
        return MonitorReading.of(
                DID_NOT_RUN, CYCLE_READINESS, Reason.of(why, fault.group()), state -> state.cycle() != Trip.PASSED);
    }

    /** At most one a cycle, so it says which cycle it was only where both grew by one. */
    private Optional<MonitorReading> inUseCounter(Scan scan) {
        if (before.inUse().isEmpty() || scan.inUse().isEmpty()) {
            return Optional.empty();
        }
        InUseCounters was = before.inUse().get();
        InUseCounters now = scan.inUse().get();
        OptionalInt cycles = was.ignitionCyclesTo(now);
        Map<String, Integer> known = was.numerators(fault.code());
        return now.numerators(fault.code()).entrySet().stream()
                .filter(count -> cycles.orElse(0) == 1
                        && count.getValue() - known.getOrDefault(count.getKey(), count.getValue()) == 1)
                .sorted(Map.Entry.comparingByKey())
                .findFirst()
                .map(count -> MonitorReading.of(
                        RAN,
                        IN_USE_COUNTER,
                        Reason.of(
                                TripReason.NUMERATOR_UP,
                                Part.verbatim(count.getKey()),
                                Part.count(count.getValue() - 1),
                                Part.count(count.getValue())),
                        state -> state.tally().counted()));
    }

    private Optional<MonitorReading> readiness(Scan scan) {
        if (!fault.isReachedByReadiness() || before.complete().isEmpty()) {
            return Optional.empty();
        }
        boolean wasComplete = before.complete().get().contains(fault.group());
        return scan.sinceClear(fault.group())
                .filter(now -> !wasComplete && now == MonitorState.COMPLETE)
                .map(now -> MonitorReading.of(
                        RAN,
                        READINESS,
                        Reason.of(TripReason.READINESS_TURNED, fault.group()),
                        state -> state.stored().completed()));
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
                    DID_NOT_RUN, EvidenceGrade.ENABLING_CONDITIONS, missed.get().reason(), state -> true));
        }
        return findings.stream().allMatch(Finding::isYes)
                ? Optional.of(MonitorReading.of(
                        RAN,
                        EvidenceGrade.ENABLING_CONDITIONS,
                        Reason.of(
                                TripReason.CONDITIONS_MET,
                                origin(),
                                Shape.EACH.of(
                                        findings.stream().map(Finding::reason).toList())),
                        state -> state.cycle() != Trip.NOT_RUN))
                : Optional.empty();
    }

    private RecordedConditions.Origin origin() {
        return fault.recorded().map(RecordedConditions::origin).orElse(RecordedConditions.Origin.SERVICE_INFORMATION);
    }

    private Finding heldInSignals(RecordedConditions conditions) {
        Finding found = drive.conditions().get(conditions.key());
        if (found == null) {
            return Finding.unknown(Reason.of(TripReason.NO_SIGNALS));
        }
        return found.isNo() && conditions.origin() == RecordedConditions.Origin.TYPICAL_ADOPTED
                ? Finding.no(Reason.of(TripReason.CONDITIONS_MISSED, conditions.origin(), found.reason()))
                : found;
    }

    /** It was on, is off, and the code that lit it is still stored: nobody cleared it. */
    private Optional<MonitorReading> milOff(Scan scan) {
        boolean wasOn = before.lit();
        boolean isOff = scan.lamp().filter(on -> !on).isPresent();
        return wasOn && isOff && scan.confirmed(fault.code()) == Scan.Presence.PRESENT
                ? Optional.of(MonitorReading.of(
                        RAN,
                        MIL_OFF,
                        Reason.of(TripReason.LAMP_WENT_OUT),
                        state -> !state.stored().lamp().isLit()))
                : Optional.empty();
    }

    private Optional<MonitorReading> driven() {
        return drive.summary()
                .milOn()
                .filter(on -> !on)
                .map(off -> MonitorReading.of(RAN, DRIVEN, Reason.of(DRIVEN), state -> true));
    }
}
