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
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.UnitState.Trip;
import java.util.ArrayList;
import java.util.List;
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
            Optional<Reason> contradiction,
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

    /** One (fault, drive) while it is decided. */
    private final class Case {
        private final Read read;
        private final Part code = Part.verbatim(fault.code().text());

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
                Reason says = seen.get().evidence().says();
                return decided(outcome, confirmed ? Reason.of(TripReason.CONFIRMED_ANEW, says) : says);
            }
            boolean anew =
                    lists(scan -> scan.confirmed(fault.code())) && read.before().confirmed() != Presence.PRESENT;
            boolean still = !anew && read.before().pending() == Presence.PRESENT;
            Evidence came = Evidence.code(Reason.of(
                    still
                            ? TripReason.STILL_PENDING_FAILED
                            : anew ? TripReason.CAME_CONFIRMED : TripReason.CAME_PENDING,
                    code));
            return decided(outcome, came.says(), came);
        }

        private Judgement passed() {
            if (read.link() == DrivingCycles.Link.EITHER) {
                return decided(RAN_UNPROVEN, Reason.of(TripReason.PERHAPS_SAME_CYCLE));
            }
            Optional<MonitorReading> ran = ran().filter(r -> r.grade().suffices(fault.weakestAccepted()));
            if (ran.isEmpty()) {
                Evidence gone = Evidence.code(goneByItself());
                return decided(PASSED, under(gone.says()), gone);
            }
            if (ran.get().grade() == EvidenceGrade.STATUS_BYTE) {
                return decided(PASSED, under(Reason.of(TripReason.TEST_COMPLETED)));
            }
            TripReason why = isPending() ? TripReason.NO_SECOND_FAILURE : TripReason.NO_CODE_CAME;
            return decided(PASSED, under(Reason.of(why, ran.get().evidence().says())));
        }

        /** With the conditions under which it passed, where they matter. */
        private Reason under(Reason passed) {
            return read.similar()
                    .map(finding -> Reason.of(TripReason.PASSED_UNDER, passed, finding.reason()))
                    .orElse(passed);
        }

        private Reason goneByItself() {
            return Reason.of(
                    read.before().pending() == Presence.PRESENT ? TripReason.PENDING_GONE : TripReason.STORED_CHANGED,
                    code);
        }

        /** The pending code was there before and is there still. */
        private Judgement stillPending() {
            Optional<MonitorReading> ran = ran().filter(r -> r.grade().suffices(EvidenceGrade.CYCLE_READINESS));
            Evidence still = Evidence.code(Reason.of(TripReason.STILL_PENDING, code));
            if (read.before().pending() != Presence.PRESENT) {
                return decided(
                        ran.isPresent() ? RAN_UNPROVEN : CARRIED_OVER,
                        Reason.of(TripReason.PENDING_SINCE_UNKNOWN),
                        still);
            }
            if (status().filter(s -> s.says() == MonitorReading.Says.DID_NOT_RUN)
                    .isPresent()) {
                return decided(CARRIED_OVER, Reason.of(TripReason.PENDING_NOT_RUN), still);
            }
            return decided(
                    CARRIED_OVER,
                    Reason.of(ran.isPresent() ? TripReason.PENDING_RAN : TripReason.PENDING_UNHEARD),
                    still);
        }

        private Judgement unproven(MonitorReading ran) {
            if (read.cleared()) {
                return decided(RAN_UNPROVEN, Reason.of(TripReason.CLEARED_IN_DRIVE));
            }
            if (!ran.grade().suffices(fault.weakestAccepted())) {
                return decided(
                        RAN_UNPROVEN,
                        Reason.of(TripReason.TOO_WEAK, ran.evidence().says(), fault.weakestAccepted()));
            }
            Optional<Finding> dissimilar = read.similar().filter(finding -> !finding.isYes());
            if (dissimilar.isPresent()) {
                return decided(
                        RAN_UNPROVEN,
                        Reason.of(TripReason.NOT_SIMILAR, dissimilar.get().reason()));
            }
            return decided(
                    RAN_UNPROVEN,
                    Reason.of(
                            read.likely().any(state -> read.of().apply(state) == Trip.NOT_RUN)
                                    ? TripReason.RAN_HERE_OR_UNRECORDED
                                    : TripReason.RESULT_NOT_KNOWN,
                            ran.evidence().says()));
        }

        private Judgement didNotRun() {
            return decided(
                    DID_NOT_RUN,
                    read.readings().stream()
                            .filter(r -> r.says() == MonitorReading.Says.DID_NOT_RUN)
                            .findFirst()
                            .map(r -> r.evidence().says())
                            .orElseGet(() -> Reason.of(
                                    TripReason.NOTHING_SAYS_IT_RAN,
                                    WaysToProve.test(fault.code(), fault.group()),
                                    NextTrip.howToRecord(fault, abilities))));
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

        private Judgement decided(Outcome outcome, Reason reason, Evidence... leading) {
            List<Evidence> evidence = new ArrayList<>(List.of(leading));
            read.readings().forEach(r -> evidence.add(r.evidence()));
            if (evidence.isEmpty()) {
                evidence.add(Evidence.record(Reason.of(TripReason.NOTHING_HELD)));
            }
            return new Judgement(read.drive().id(), outcome, reason, evidence);
        }
    }

    /** Where a scan disagrees with itself: with the counters, the lamp and the count, or with a stronger reading. */
    static Optional<Reason> contradiction(
            RepairedFault fault, Knowledge before, Scan scan, List<MonitorReading> readings) {
        return scan.contradictions().stream()
                .findFirst()
                .or(() -> before.counters().contradictionTo(Counters.read(scan)))
                .or(() -> statusAgainstResult(fault, before, scan, readings));
    }

    private static Optional<Reason> statusAgainstResult(
            RepairedFault fault, Knowledge before, Scan scan, List<MonitorReading> readings) {
        boolean passed = before.statusIn(scan, fault)
                .flatMap(StatusByte::thisCycle)
                .filter(result -> result == StatusByte.CycleResult.PASSED)
                .isPresent();
        return readings.stream()
                .filter(r -> passed && r.grade() == EvidenceGrade.TEST_RESULT && r.isBad())
                .findFirst()
                .map(r ->
                        Reason.of(TripReason.STATUS_AGAINST_RESULT, r.evidence().says()));
    }
}
