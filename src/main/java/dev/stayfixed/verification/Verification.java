package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.obd.Scan;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * Folds everything that is known of a repaired fault to its verdict: {@link TwoTripRule} decides each drive,
 * {@link VerificationState} counts. The same input gives the same verdict, whatever order it arrived in.
 */
public final class Verification {

    private static final Comparator<RepairAttempt> BY_TIME =
            Comparator.comparing(RepairAttempt::at).thenComparing(RepairAttempt::id);
    private static final Comparator<DriveRecord> BY_START =
            Comparator.comparing(DriveRecord::start).thenComparing(DriveRecord::id);

    private final RuleSet rules;

    public Verification(RuleSet rules) {
        this.rules = rules;
    }

    /**
     * The verdict. Drives from before the first repair only tell what the control unit had stored by then.
     *
     * @param repairs of this fault, in any order; none means that it still waits for a repair
     * @param drives of the vehicle, in any order; a second drive with the id of another is left out
     */
    public Verdict of(RepairedFault fault, List<RepairAttempt> repairs, List<DriveRecord> drives) {
        List<RepairAttempt> attempts = repairs.stream().sorted(BY_TIME).toList();
        List<DriveRecord> inOrder = onceEach(drives);
        List<Scan> scans = scans(attempts, inOrder);
        Owner owner = Owner.of(fault, scans);
        Abilities abilities = Abilities.shownBy(scans, OptionalInt.empty());
        AttemptFold fold = new AttemptFold(
                fault, rules, abilities, owner, asked(fault, scans), new IgnitionCycles(inOrder, owner));
        List<Verdict.Attempt> judged = new ArrayList<>();
        before(inOrder, attempts).forEach(fold::remember);
        for (int i = 0; i < attempts.size(); i++) {
            Instant from = attempts.get(i).at();
            Instant until = i + 1 < attempts.size() ? attempts.get(i + 1).at() : Instant.MAX;
            List<DriveRecord> since = inOrder.stream()
                    .filter(drive ->
                            !drive.start().isBefore(from) && drive.start().isBefore(until))
                    .toList();
            fold.begin(
                    attempts.get(i),
                    notTaken(fault, attempts.get(i), since, owner),
                    since.stream().findFirst());
            since.forEach(fold::add);
            judged.add(fold.attempt(attempts.get(i).id()));
        }
        VerificationState state = judged.isEmpty()
                ? new VerificationState.AwaitingRepair()
                : judged.get(judged.size() - 1).state();
        return new Verdict(
                state, judged, fold.memory(), NextTrip.neededAfter(fault, state, abilities), fold.doubt(), rules.id());
    }

    private static List<Scan> scans(List<RepairAttempt> attempts, List<DriveRecord> drives) {
        return Stream.concat(
                        attempts.stream()
                                .flatMap(a ->
                                        Stream.of(a.scanBefore(), a.scanAfter()).flatMap(Optional::stream)),
                        drives.stream().flatMap(drive -> drive.scans().stream().map(DriveRecord.TimedScan::scan)))
                .toList();
    }

    private static Histories.Asked asked(RepairedFault fault, List<Scan> scans) {
        return new Histories.Asked(
                scans.stream().anyMatch(Scan::asksForPermanentCodes),
                scans.stream().anyMatch(scan -> scan.inUse().isPresent()),
                scans.stream().anyMatch(scan -> !scan.testResults().isEmpty()),
                scans.stream().anyMatch(scan -> scan.sinceClear(fault.group()).isPresent() || scan.hasStatuses()),
                scans.stream().anyMatch(Scan::hasStatuses));
    }

    /** A clear sets the counters since the clear to 0; what they say at the first reading must fit into the time since then. */
    private static Optional<String> notTaken(
            RepairedFault fault, RepairAttempt repair, List<DriveRecord> since, Owner owner) {
        if (!repair.codesCleared()) {
            return Optional.empty();
        }
        Optional<String> atOnce = repair.scanAfter()
                .flatMap(scan -> owner.counters(scan)
                        .moreThanFitsInto(Duration.ZERO)
                        .or(() -> stillStored(fault, owner.in(scan))));
        return atOnce.or(() -> since.stream()
                .takeWhile(drive -> !drive.clearedBefore())
                .flatMap(drive -> drive.scans().stream()
                        .map(timed -> owner.counters(timed.scan())
                                .moreThanFitsInto(Duration.between(repair.at(), DrivingCycles.until(drive)))))
                .flatMap(Optional::stream)
                .findFirst());
    }

    private static Optional<String> stillStored(RepairedFault fault, Scan own) {
        return own.confirmed(fault.code()) == Scan.Presence.PRESENT
                ? Optional.of(fault.code().text() + " is still stored in the scan right after it")
                : Optional.empty();
    }

    private static List<DriveRecord> before(List<DriveRecord> drives, List<RepairAttempt> attempts) {
        Instant first = attempts.isEmpty() ? Instant.MAX : attempts.get(0).at();
        return drives.stream().filter(drive -> drive.start().isBefore(first)).toList();
    }

    private static List<DriveRecord> onceEach(List<DriveRecord> drives) {
        var seen = new java.util.HashSet<String>();
        return drives.stream()
                .sorted(BY_START)
                .filter(drive -> seen.add(drive.id()))
                .toList();
    }
}
