package dev.stayfixed.verification;

import static dev.stayfixed.verification.Outcome.CARRIED_OVER;
import static dev.stayfixed.verification.Outcome.CONTRADICTORY;
import static dev.stayfixed.verification.Outcome.DID_NOT_RUN;
import static dev.stayfixed.verification.Outcome.FAILED;
import static dev.stayfixed.verification.Outcome.FAILED_CONFIRMED;
import static dev.stayfixed.verification.Outcome.PASSED;
import static dev.stayfixed.verification.Outcome.RAN_UNPROVEN;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.Scan.Presence;
import dev.stayfixed.obd.StatusByte;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Decides one (fault, drive): was this drive a trip for this fault, and did the fault's monitor pass or fail in it? A drive is a
 * trip only if the monitor ran to a decision; a drive that failed and later passed is a fail; a pending code still there after a
 * drive without the monitor is no second failure (13 CCR 1968.2 (d)(2.2)). How two such outcomes become a verdict is in
 * {@link VerificationState}.
 */
final class TwoTripRule {

    /**
     * An outcome, and what the record says beside it.
     *
     * @param unseen a failed trip before this drive that nobody recorded
     * @param onceErased what the drive turns out to have been, should the pending code be gone at the next start with nothing driven
     *     in between: it is erased only at the end of a cycle that ran and passed
     */
    record Decision(Judgement judgement, Optional<Unseen> unseen, Optional<Judgement> onceErased) {

        Decision(Judgement judgement, Optional<Unseen> unseen) {
            this(judgement, unseen, Optional.empty());
        }
    }

    /** A failed trip that shows only in what it left behind. */
    record Unseen(String reason, Left left) {

        enum Left {
            CONFIRMED_CODE,
            PENDING_CODE,
            /** Only the mark "failed since the clear": the pending code was erased, so a later trip passed. */
            MARK_ONLY
        }
    }

    /** What is known around a drive beside its own record. */
    record Setting(Knowledge before, boolean clearedDuring, int cyclesWithoutSimilarConditions) {}

    private final RuleSet rules;
    private final SimilarConditions similarConditions;

    TwoTripRule(RuleSet rules) {
        this.rules = rules;
        this.similarConditions = new SimilarConditions(rules);
    }

    /** A drive without a scan at its end: only its summary can speak. */
    Decision judgeWithoutScan(RepairedFault fault, Setting setting, DriveRecord drive) {
        List<MonitorReading> readings = new MonitorEvidence(fault, setting.before(), drive).withoutScan();
        Case c = new Case(fault, setting, drive, Optional.empty(), readings);
        return only(c.first().filter(MonitorReading::ran).isPresent() ? c.ran() : c.didNotRun());
    }

    /** A drive with a scan taken in it or at its end. */
    Decision judge(RepairedFault fault, Setting setting, DriveRecord drive, Scan scan) {
        Optional<String> contradiction = contradiction(setting.before(), scan);
        if (contradiction.isPresent()) {
            return only(new Judgement(
                    drive.id(), CONTRADICTORY, contradiction.get(), List.of(Evidence.record(contradiction.get()))));
        }
        List<MonitorReading> readings = new MonitorEvidence(fault, setting.before(), drive).in(scan);
        Case c = new Case(fault, setting, drive, Optional.of(scan), readings);
        Optional<MonitorReading> status = c.reading(EvidenceGrade.STATUS_BYTE);
        return status.isPresent() ? c.byStatus(status.get()) : c.byLists(scan);
    }

    static Optional<String> contradiction(Knowledge before, Scan scan) {
        return scan.contradictions().stream()
                .findFirst()
                .or(() -> before.counters().contradictionTo(Counters.read(scan)));
    }

    private static Decision only(Judgement judgement) {
        return new Decision(judgement, Optional.empty());
    }

    /** One (fault, drive) while it is being decided. */
    private final class Case {
        private final RepairedFault fault;
        private final Knowledge before;
        private final Setting setting;
        private final DriveRecord drive;
        private final Optional<Scan> scan;
        private final List<MonitorReading> readings;

        Case(
                RepairedFault fault,
                Setting setting,
                DriveRecord drive,
                Optional<Scan> scan,
                List<MonitorReading> readings) {
            this.fault = fault;
            this.before = setting.before();
            this.setting = setting;
            this.drive = drive;
            this.scan = scan;
            this.readings = readings;
        }

        Optional<MonitorReading> first() {
            return readings.stream().findFirst();
        }

        Optional<MonitorReading> reading(EvidenceGrade grade) {
            return readings.stream().filter(r -> r.grade() == grade).findFirst();
        }

        /** The status byte of this very code overrules all that is said of its group. */
        Decision byStatus(MonitorReading status) {
            StatusByte now = before.statusIn(scan.orElseThrow(), fault).orElseThrow();
            boolean newlyConfirmed = now.isConfirmed() && before.confirmed() == Presence.ABSENT;
            return switch (status.says()) {
                case FAILED ->
                    only(decided(
                            newlyConfirmed ? FAILED_CONFIRMED : FAILED,
                            status.evidence().says() + (newlyConfirmed ? ", and the code is confirmed anew" : "")));
                case DID_NOT_RUN ->
                    new Decision(
                            decided(
                                    now.isPending() ? CARRIED_OVER : DID_NOT_RUN,
                                    now.isPending()
                                            ? "the pending code is still stored, but the test did not run: no second failure"
                                            : status.evidence().says()),
                            unseenByStatus(now, newlyConfirmed));
                default -> new Decision(passedByStatus(), unseenByStatus(now, newlyConfirmed));
            };
        }

        private Judgement passedByStatus() {
            Optional<MonitorReading> failedTest =
                    reading(EvidenceGrade.TEST_RESULT).filter(r -> r.says() == MonitorReading.Says.FAILED);
            return failedTest.isPresent()
                    ? decided(
                            CONTRADICTORY,
                            "the status byte says passed, but "
                                    + failedTest.get().evidence().says())
                    : passed("its test completed in this drive and did not fail");
        }

        private Optional<Unseen> unseenByStatus(StatusByte now, boolean newlyConfirmed) {
            boolean newlyPending = now.isPending() && before.pending() == Presence.ABSENT;
            boolean newlyFailed = now.failedSinceClear() && before.knownNotFailedSinceClear();
            if (!newlyConfirmed && !newlyPending && !newlyFailed) {
                return Optional.empty();
            }
            if (newlyConfirmed) {
                return unseen("confirmed", Unseen.Left.CONFIRMED_CODE);
            }
            return newlyPending
                    ? unseen("pending", Unseen.Left.PENDING_CODE)
                    : unseen(
                            "marked failed since the clear",
                            now.isPending() ? Unseen.Left.PENDING_CODE : Unseen.Left.MARK_ONLY);
        }

        /** Without a status byte the code lists say whether it failed, and the monitor's evidence whether it ran. */
        Decision byLists(Scan read) {
            if (read.confirmed(fault.code()) == Presence.PRESENT && before.confirmed() == Presence.ABSENT) {
                return codeCame(FAILED_CONFIRMED, "confirmed");
            }
            if (read.pending(fault.code()) == Presence.PRESENT && before.pending() == Presence.ABSENT) {
                return codeCame(FAILED, "pending");
            }
            Optional<MonitorReading> failedTest = readings.stream()
                    .filter(r -> r.says() == MonitorReading.Says.FAILED)
                    .findFirst();
            if (failedTest.isPresent()) {
                return only(decided(FAILED, failedTest.get().evidence().says()));
            }
            if (read.pending(fault.code()) == Presence.PRESENT) {
                return stillPending(read);
            }
            return only(first().filter(MonitorReading::ran).isPresent() ? ran() : didNotRun());
        }

        private Decision codeCame(Outcome outcome, String list) {
            Evidence code = Evidence.code(fault.code().text() + " is " + list + " and was not before");
            Optional<MonitorReading> notRun = first().filter(r -> r.says() == MonitorReading.Says.DID_NOT_RUN)
                    .filter(r -> r.grade().suffices(EvidenceGrade.CYCLE_READINESS));
            if (notRun.isEmpty()) {
                return only(decided(outcome, code.says(), code));
            }
            return new Decision(
                    decided(
                            CARRIED_OVER,
                            "%s is %s, but %s: it came from a drive that was not recorded"
                                    .formatted(
                                            fault.code().text(),
                                            list,
                                            notRun.get().evidence().says()),
                            code),
                    unseen(list, outcome == FAILED_CONFIRMED ? Unseen.Left.CONFIRMED_CODE : Unseen.Left.PENDING_CODE));
        }

        private Optional<Unseen> unseen(String what, Unseen.Left left) {
            return Optional.of(new Unseen(
                    "%s is %s and was not at the last record: it failed in a drive that was not recorded"
                            .formatted(fault.code().text(), what),
                    left));
        }

        /**
         * The pending code was there before and is there still. It is erased only at the end of a cycle that ran and passed
         * (1968.2 (d)(2.2.2)), while a second failure of a two-trip fault would have confirmed it within ten seconds.
         */
        private Decision stillPending(Scan read) {
            Optional<MonitorReading> ran = first().filter(MonitorReading::ran)
                    .filter(r -> r.grade().suffices(EvidenceGrade.CYCLE_READINESS))
                    .filter(r -> r.grade().suffices(fault.weakestAccepted()));
            Evidence code = Evidence.code(fault.code().text() + " is still pending");
            if (before.pending() == Presence.UNKNOWN) {
                return only(decided(
                        ran.isPresent() ? RAN_UNPROVEN : CARRIED_OVER,
                        "the code is pending, but no earlier scan says whether it came in this drive",
                        code));
            }
            boolean notConfirmed = fault.trips() == Trips.TWO && read.confirmed(fault.code()) == Presence.ABSENT;
            if (ran.isPresent() && notConfirmed) {
                return only(passed(ran.get().evidence().says()
                        + "; a second failure would have confirmed the code, so the pending code only waits for the end of"
                        + " the cycle"));
            }
            Judgement carriedOver = decided(
                    CARRIED_OVER,
                    ran.isPresent()
                            ? "the pending code is still stored and the monitor ran, but the code was confirmed before, so"
                                    + " nothing tells a new failure from the old one; scan again at the next start"
                            : "the pending code is still stored, but nothing says that the monitor ran: no second failure",
                    code);
            return new Decision(
                    carriedOver,
                    Optional.empty(),
                    ran.map(r -> passed(r.evidence().says()
                                    + "; the pending code was gone at the next start, and it is erased only at the end of a cycle that"
                                    + " ran and passed"))
                            .filter(judgement -> judgement.outcome() == PASSED));
        }

        Judgement ran() {
            MonitorReading ran = first().orElseThrow();
            if (ran.grade() == EvidenceGrade.DRIVEN) {
                return didNotRun();
            }
            if (!ran.grade().suffices(fault.weakestAccepted())) {
                return decided(
                        RAN_UNPROVEN,
                        ran.evidence().says() + "; this job accepts no evidence weaker than: "
                                + fault.weakestAccepted().words());
            }
            return noCodeCame()
                    ? passed(ran.evidence().says() + ", and no code came")
                    : decided(
                            RAN_UNPROVEN,
                            ran.evidence().says()
                                    + "; whether it failed is not known: read services $03 and $07 before the"
                                    + " key is turned off");
        }

        /** A first failure of a two-trip fault shows only as a pending code; a one-trip fault lights the MIL at once. */
        private boolean noCodeCame() {
            boolean milOff = drive.summary().milOn().filter(on -> !on).isPresent();
            if (scan.isEmpty()) {
                return fault.trips() == Trips.ONE && milOff;
            }
            Scan read = scan.get();
            if (read.pending(fault.code()) == Presence.ABSENT) {
                return true;
            }
            boolean milRead = read.sinceClear().filter(r -> !r.milCommanded()).isPresent() || milOff;
            return fault.trips() == Trips.ONE && (read.confirmed(fault.code()) == Presence.ABSENT || milRead);
        }

        Judgement didNotRun() {
            return decided(
                    DID_NOT_RUN,
                    first().filter(r -> r.says() == MonitorReading.Says.DID_NOT_RUN)
                            .map(r -> r.evidence().says())
                            .orElse(
                                    "nothing in this record says that the "
                                            + fault.group().label()
                                            + " monitor ran; end the next drive with a scan of PID $41 and service $07, key still on"));
        }

        private Judgement passed(String reason) {
            if (setting.clearedDuring() || scan.filter(Scan::codesCleared).isPresent()) {
                return decided(
                        RAN_UNPROVEN,
                        "codes were cleared in this drive or in its scan, so a failure before that would not show; read the"
                                + " codes before clearing them");
            }
            if (!fault.needsSimilarConditions() || fault.freezeFrame().isEmpty()) {
                return decided(PASSED, reason);
            }
            Finding similar =
                    similarConditions.metIn(drive.summary(), fault.freezeFrame().get());
            if (similar.isYes()) {
                return decided(PASSED, reason + "; " + similar.reason());
            }
            int cycles = setting.cyclesWithoutSimilarConditions() + 1;
            return cycles >= rules.cyclesWithoutSimilarConditions()
                    ? decided(
                            PASSED,
                            reason + "; " + cycles + " driving cycles without the fault, none under similar conditions")
                    : decided(RAN_UNPROVEN, "the monitor passed, but " + similar.reason());
        }

        private Judgement decided(Outcome outcome, String reason, Evidence... leading) {
            List<Evidence> evidence = new ArrayList<>(List.of(leading));
            readings.forEach(r -> evidence.add(r.evidence()));
            if (evidence.isEmpty()) {
                evidence.add(Evidence.record("the record holds nothing about this monitor"));
            }
            return new Judgement(drive.id(), outcome, reason, evidence);
        }
    }
}
