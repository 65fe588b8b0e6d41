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
import dev.stayfixed.verification.UnitState.Trip;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/**
 * Decides one (fault, drive): was this drive a trip for this fault, and did the fault's monitor pass or fail in it? The outcome is what
 * the histories share that fit everything read so far, those first that need no trip that nobody recorded; the reason is the reading
 * that left no other. A drive is a trip only if the monitor ran to a decision; a drive that failed and later passed is a fail; a pending
 * code still there after a drive without the monitor is no second failure (13 CCR 1968.2 (d)(2.2)).
 */
final class TwoTripRule {

    /**
     * A drive after all its readings.
     *
     * @param before what was known when it began
     * @param scans the owner's answers in the drive, in their order
     * @param readings of the fault's monitor, strongest first
     * @param likely the histories that the outcome is taken from
     * @param of what the drive came to in one of them
     * @param contradiction why the record disagrees with itself
     * @param cleared codes were cleared in the drive or in its scan
     * @param link how it hangs together with the record before it
     * @param similar whether it ran under conditions similar to the freeze frame, where this fault needs them
     */
    record Read(
            DriveRecord drive,
            Knowledge before,
            List<Scan> scans,
            List<MonitorReading> readings,
            Histories likely,
            Function<UnitState, Trip> of,
            Optional<String> contradiction,
            boolean cleared,
            DrivingCycles.Link link,
            Optional<Finding> similar) {}

    private final RepairedFault fault;
    private final Abilities abilities;

    /** @param abilities what the vehicle has shown that it answers */
    TwoTripRule(RepairedFault fault, Abilities abilities) {
        this.fault = fault;
        this.abilities = abilities;
    }

    Judgement judge(Read read) {
        return new Case(read).judge();
    }

    /** One (fault, drive) while it is put into words. */
    private final class Case {
        private final Read read;
        private final String code = fault.code().text();

        Case(Read read) {
            this.read = read;
        }

        Judgement judge() {
            Optional<Trip> trip = read.likely().agreed(read.of());
            if (trip.filter(t -> t == Trip.FAILED).isPresent()) {
                return failed();
            }
            if (read.contradiction().isPresent()) {
                return decided(
                        CONTRADICTORY,
                        read.contradiction().get(),
                        Evidence.record(read.contradiction().get()));
            }
            if (trip.filter(t -> t == Trip.PASSED).isPresent()) {
                return passed();
            }
            return isPending() ? stillPending() : ran().isPresent() ? unproven(ran().get()) : didNotRun();
        }

        private Judgement failed() {
            boolean confirmed = read.likely().all(UnitState::confirmedNow);
            Outcome outcome = confirmed ? FAILED_CONFIRMED : FAILED;
            Optional<MonitorReading> seen =
                    read.readings().stream().filter(MonitorReading::isBad).findFirst();
            if (seen.isPresent()) {
                return decided(
                        outcome, seen.get().evidence().says() + (confirmed ? ", and the code is confirmed anew" : ""));
            }
            String list =
                    lists(scan -> scan.confirmed(fault.code())) && read.before().confirmed() != Presence.PRESENT
                            ? "confirmed"
                            : "pending";
            boolean still = list.equals("pending") && read.before().pending() == Presence.PRESENT;
            Evidence came = Evidence.code(
                    still
                            ? code + " is still pending, and what was read leaves nothing but a failed trip"
                            : code + " is " + list + " and was not before");
            return decided(outcome, came.says(), came);
        }

        private Judgement passed() {
            if (read.link() == DrivingCycles.Link.EITHER) {
                return decided(
                        RAN_UNPROVEN,
                        "nothing shows that the engine was stopped and started since the record before, and one driving cycle"
                                + " counts once; read the run time (PID $1F) or the ignition cycle counter ($09)");
            }
            Optional<MonitorReading> ran = ran().filter(r -> r.grade().suffices(fault.weakestAccepted()));
            String similar =
                    read.similar().map(finding -> "; " + finding.reason()).orElse("");
            if (ran.isEmpty()) {
                Evidence gone = Evidence.code(goneByItself());
                return decided(PASSED, gone.says() + similar, gone);
            }
            if (ran.get().grade() == EvidenceGrade.STATUS_BYTE) {
                return decided(PASSED, "its test completed in this drive and did not fail" + similar);
            }
            String why = isPending()
                    ? "; a second failure would have confirmed the code, so the pending code only waits for the end of the cycle"
                    : ", and no code came";
            return decided(PASSED, ran.get().evidence().says() + why + similar);
        }

        private String goneByItself() {
            return read.before().pending() == Presence.PRESENT
                    ? code + " is no longer pending and nothing was cleared: the car erases it only after a passed trip"
                    : "what the car has stored of " + code + " changed as it does only after a passed trip";
        }

        /** The pending code was there before and is there still. */
        private Judgement stillPending() {
            Optional<MonitorReading> ran = ran().filter(r -> r.grade().suffices(EvidenceGrade.CYCLE_READINESS));
            Evidence still = Evidence.code(code + " is still pending");
            if (read.before().pending() != Presence.PRESENT) {
                return decided(
                        ran.isPresent() ? RAN_UNPROVEN : CARRIED_OVER,
                        "the code is pending, but no earlier scan says whether it came in this drive",
                        still);
            }
            if (status().filter(s -> s.says() == MonitorReading.Says.DID_NOT_RUN)
                    .isPresent()) {
                return decided(
                        CARRIED_OVER,
                        "the pending code is still stored, but the test did not run: no second failure",
                        still);
            }
            return decided(
                    CARRIED_OVER,
                    ran.isPresent()
                            ? "the pending code is still stored and the monitor ran, and nothing tells a new failure from the"
                                    + " old one; scan again at the next start"
                            : "the pending code is still stored, but nothing says that the monitor ran: no second failure",
                    still);
        }

        private Judgement unproven(MonitorReading ran) {
            if (read.cleared()) {
                return decided(
                        RAN_UNPROVEN,
                        "codes were cleared in this drive or in its scan, so a failure before that would not show; read the"
                                + " codes before clearing them");
            }
            if (!ran.grade().suffices(fault.weakestAccepted())) {
                return decided(
                        RAN_UNPROVEN,
                        ran.evidence().says() + "; this job accepts no evidence weaker than: "
                                + fault.weakestAccepted().words());
            }
            Optional<Finding> dissimilar = read.similar().filter(finding -> !finding.isYes());
            if (dissimilar.isPresent()) {
                return decided(
                        RAN_UNPROVEN,
                        "the monitor passed, but " + dissimilar.get().reason());
            }
            return decided(
                    RAN_UNPROVEN,
                    ran.evidence().says()
                            + (read.likely().any(state -> read.of().apply(state) == Trip.NOT_RUN)
                                    ? ", in this drive or in one that nobody recorded"
                                    : "; whether it failed is not known: read services $03 and $07 before the key is turned"
                                            + " off"));
        }

        private Judgement didNotRun() {
            return decided(
                    DID_NOT_RUN,
                    read.readings().stream()
                            .filter(r -> r.says() == MonitorReading.Says.DID_NOT_RUN)
                            .findFirst()
                            .map(r -> r.evidence().says())
                            .orElseGet(() -> "nothing in this record says that "
                                    + WaysToProve.test(fault.code(), fault.group()) + " ran; "
                                    + uncapitalised(NextTrip.howToRecord(fault, abilities))));
        }

        private static String uncapitalised(String sentence) {
            String text = sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
            return text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
        }

        /** The strongest reading that says it ran, unless a stronger one says that it did not. */
        private Optional<MonitorReading> ran() {
            return read.readings().stream()
                    .filter(r -> r.grade() != EvidenceGrade.DRIVEN)
                    .findFirst()
                    .filter(MonitorReading::ran);
        }

        private Optional<MonitorReading> status() {
            return read.readings().stream()
                    .filter(r -> r.grade() == EvidenceGrade.STATUS_BYTE)
                    .findFirst();
        }

        private boolean isPending() {
            List<Presence> said = read.scans().stream()
                    .map(scan -> scan.pending(fault.code()))
                    .filter(presence -> presence != Presence.UNKNOWN)
                    .toList();
            return !said.isEmpty() && said.get(said.size() - 1) == Presence.PRESENT;
        }

        private boolean lists(Function<Scan, Presence> list) {
            return read.scans().stream().anyMatch(scan -> list.apply(scan) == Presence.PRESENT);
        }

        private Judgement decided(Outcome outcome, String reason, Evidence... leading) {
            List<Evidence> evidence = new ArrayList<>(List.of(leading));
            read.readings().forEach(r -> evidence.add(r.evidence()));
            if (evidence.isEmpty()) {
                evidence.add(Evidence.record("the record holds nothing about this monitor"));
            }
            return new Judgement(read.drive().id(), outcome, reason, evidence);
        }
    }

    /** Where a scan disagrees with itself: with the counters, the lamp and the count, or with a stronger reading. */
    static Optional<String> contradiction(
            RepairedFault fault, Knowledge before, Scan scan, List<MonitorReading> readings) {
        return scan.contradictions().stream()
                .findFirst()
                .or(() -> before.counters().contradictionTo(Counters.read(scan)))
                .or(() -> statusAgainstResult(fault, before, scan, readings));
    }

    private static Optional<String> statusAgainstResult(
            RepairedFault fault, Knowledge before, Scan scan, List<MonitorReading> readings) {
        boolean passed = before.statusIn(scan, fault)
                .flatMap(StatusByte::thisCycle)
                .filter(result -> result == StatusByte.CycleResult.PASSED)
                .isPresent();
        return readings.stream()
                .filter(r -> passed && r.grade() == EvidenceGrade.TEST_RESULT && r.isBad())
                .findFirst()
                .map(r -> "the status byte says passed, but " + r.evidence().says());
    }
}
