package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.obd.Scan;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What is known of a repaired fault, folded. Never changes, so any thread may keep it. One more drive goes on from a checkpoint in front
 * of it, and what comes out is the same as if everything had been folded at once.
 *
 * <p>A checkpoint is good for another drive if nothing so far can have rested on that one. There are three ways in which what lies in
 * front of a drive rests on it, and each is asked about: what all scans show together ({@link AllScans}), the cycles that a later
 * reading of the ignition counter leaves room for ({@link IgnitionCycles}), and a clear that a later reading belies
 * ({@link ClearTaken}).
 */
public final class FaultFold {

    private final RepairedFault fault;
    private final RuleSet rules;
    private final List<RepairAttempt> attempts;
    private final List<DriveRecord> drives;
    private final AllScans scans;
    private final Owner owner;
    private final Abilities abilities;
    private final IgnitionCycles ignitions;

    /** For each attempt. */
    private final List<ClearTaken> clears;

    /** The earliest first; the first one lies in front of all drives. */
    private final List<Checkpoint> checkpoints;

    private final Verdict verdict;

    /**
     * Where the fold stood behind some drives.
     *
     * @param place how many
     * @param ended the attempts that were over by then
     * @param begun how many attempts had begun
     */
    private record Checkpoint(AttemptFold fold, int place, List<Verdict.Attempt> ended, int begun) {

        /** The ones close to the end are dense, the earlier ones rare: about two for each power of two. */
        static boolean isKept(int place, int drives) {
            return drives - place <= 2 * Integer.lowestOneBit(place);
        }
    }

    private FaultFold(
            RepairedFault fault,
            RuleSet rules,
            List<RepairAttempt> attempts,
            List<DriveRecord> drives,
            AllScans scans,
            Owner owner,
            Abilities abilities,
            IgnitionCycles ignitions,
            List<ClearTaken> clears,
            Optional<List<Checkpoint>> before) {
        this.fault = fault;
        this.rules = rules;
        this.attempts = attempts;
        this.drives = drives;
        this.scans = scans;
        this.owner = owner.afresh();
        this.abilities = abilities;
        this.ignitions = ignitions;
        this.clears = clears;
        this.checkpoints = new ArrayList<>(before.orElseGet(() -> List.of(beginning())));
        this.verdict = folded(owner);
    }

    /**
     * Everything, folded.
     *
     * @param attempts in the order of time
     * @param drives in the order of their start, each with an id of its own
     */
    static FaultFold of(RepairedFault fault, RuleSet rules, List<RepairAttempt> attempts, List<DriveRecord> drives) {
        AllScans scans = AllScans.NONE
                .and(
                        fault,
                        attempts.stream()
                                .flatMap(a ->
                                        Stream.of(a.scanBefore(), a.scanAfter()).flatMap(Optional::stream)))
                .and(fault, drives.stream().flatMap(FaultFold::scans));
        Owner owner = scans.owner(fault);
        List<ClearTaken> clears = IntStream.range(0, attempts.size())
                .mapToObj(attempt -> ClearTaken.at(
                        attempts.get(attempt),
                        fault,
                        drives,
                        from(attempts, drives, attempt),
                        from(attempts, drives, attempt + 1),
                        owner))
                .toList();
        return new FaultFold(
                fault,
                rules,
                attempts,
                drives,
                scans,
                owner,
                scans.abilities(),
                new IgnitionCycles(drives, owner),
                clears,
                Optional.empty());
    }

    private static Stream<Scan> scans(DriveRecord drive) {
        return drive.scans().stream().map(DriveRecord.TimedScan::scan);
    }

    /** The place of the first drive for an attempt; the attempt behind the last one begins behind all drives. */
    private static int from(List<RepairAttempt> attempts, List<DriveRecord> drives, int attempt) {
        if (attempt >= attempts.size()) {
            return drives.size();
        }
        Instant at = attempts.get(attempt).at();
        int low = 0;
        int high = drives.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (drives.get(middle).start().isBefore(at)) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The verdict on everything so far. */
    public Verdict verdict() {
        return verdict;
    }

    /** The same with one more drive of the vehicle, whenever it was; one with the id of another is held against that as ever. */
    public FaultFold and(DriveRecord drive) {
        List<DriveRecord> more = new ArrayList<>(drives);
        if (drives.stream().anyMatch(known -> known.id().equals(drive.id()))) {
            more.add(drive);
            return new Verification(rules).fold(fault, attempts, more);
        }
        int place = -Collections.binarySearch(drives, drive, Verification.BY_START) - 1;
        more.add(place, drive);
        AllScans all = scans.and(fault, scans(drive));
        if (!all.owner(fault).isLike(owner)
                || !all.abilities().equals(abilities)
                || !all.asked().equals(scans.asked())) {
            return of(fault, rules, attempts, more);
        }
        Owner fresh = owner.afresh();
        IgnitionCycles counted = ignitions.with(more, place, fresh);
        List<ClearTaken> taken = clears(more, place, fresh);
        int unchanged = firstThatDiffers(taken);
        List<Checkpoint> good = checkpoints.stream()
                .filter(before -> before.place() <= place && before.begun() <= unchanged)
                .filter(before -> before.fold().seen() <= place || !counted.isCounted(place))
                .toList();
        return new FaultFold(fault, rules, attempts, more, all, fresh, abilities, counted, taken, Optional.of(good));
    }

    private List<ClearTaken> clears(List<DriveRecord> more, int place, Owner fresh) {
        List<ClearTaken> taken = new ArrayList<>();
        for (int attempt = 0; attempt < attempts.size(); attempt++) {
            int until = from(attempts, more, attempt + 1);
            boolean isForIt = from(attempts, more, attempt) <= place && place < until;
            ClearTaken before = clears.get(attempt);
            taken.add(isForIt ? before.with(attempts.get(attempt), more, place, until, fresh) : before.behind(place));
        }
        return taken;
    }

    private int firstThatDiffers(List<ClearTaken> taken) {
        int attempt = 0;
        while (attempt < taken.size()
                && taken.get(attempt).doubt().equals(clears.get(attempt).doubt())) {
            attempt++;
        }
        return attempt;
    }

    private Checkpoint beginning() {
        return new Checkpoint(
                new AttemptFold(fault, rules, abilities, owner, scans.asked(), IgnitionCycles.NONE), 0, List.of(), 0);
    }

    /** Goes on from the last checkpoint, and leaves those that a further drive may need. */
    private Verdict folded(Owner lookedUp) {
        Checkpoint start = checkpoints.get(checkpoints.size() - 1);
        checkpoints.removeIf(before -> before.place() > 0 && !Checkpoint.isKept(before.place(), drives.size()));
        AttemptFold fold = new AttemptFold(start.fold(), lookedUp, ignitions);
        List<Verdict.Attempt> ended = new ArrayList<>(start.ended());
        int begun = start.begun();
        for (int place = start.place(); place < drives.size(); place++) {
            DriveRecord drive = drives.get(place);
            while (begun < attempts.size()
                    && !drive.start().isBefore(attempts.get(begun).at())) {
                begun = begin(fold, begun, ended);
            }
            if (begun == 0) {
                fold.remember(drive);
            } else {
                fold.add(drive);
            }
            if (Checkpoint.isKept(place + 1, drives.size())) {
                checkpoints.add(new Checkpoint(
                        new AttemptFold(fold, owner, IgnitionCycles.NONE), place + 1, List.copyOf(ended), begun));
            }
        }
        while (begun < attempts.size()) {
            begun = begin(fold, begun, ended);
        }
        if (begun > 0) {
            ended.add(fold.attempt(attempts.get(begun - 1).id()));
        }
        VerificationState state = ended.isEmpty()
                ? new VerificationState.AwaitingRepair()
                : ended.get(ended.size() - 1).state();
        return new Verdict(
                state, ended, fold.memory(), NextTrip.neededAfter(fault, state, abilities), fold.doubt(), rules.id());
    }

    private int begin(AttemptFold fold, int attempt, List<Verdict.Attempt> ended) {
        if (attempt > 0) {
            ended.add(fold.attempt(attempts.get(attempt - 1).id()));
        }
        int from = from(attempts, drives, attempt);
        fold.begin(
                attempts.get(attempt),
                clears.get(attempt).doubt(),
                from < from(attempts, drives, attempt + 1) ? Optional.of(drives.get(from)) : Optional.empty());
        return attempt + 1;
    }
}
