package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

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
        AttemptFold fold = new AttemptFold(fault, rules);
        List<Verdict.Attempt> judged = new ArrayList<>();
        before(inOrder, attempts).forEach(fold::remember);
        for (int i = 0; i < attempts.size(); i++) {
            fold.begin(attempts.get(i));
            Instant from = attempts.get(i).at();
            Instant until = i + 1 < attempts.size() ? attempts.get(i + 1).at() : Instant.MAX;
            inOrder.stream()
                    .filter(drive ->
                            !drive.start().isBefore(from) && drive.start().isBefore(until))
                    .forEach(fold::add);
            judged.add(fold.attempt(attempts.get(i).id()));
        }
        VerificationState state = judged.isEmpty()
                ? new VerificationState.AwaitingRepair()
                : judged.get(judged.size() - 1).state();
        return new Verdict(state, judged, fold.memory(), NextTrip.neededAfter(fault, state), rules.id());
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
