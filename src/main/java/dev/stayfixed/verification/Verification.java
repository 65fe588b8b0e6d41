package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRecord;
import java.util.Comparator;
import java.util.List;

/**
 * Folds everything that is known of a repaired fault to its verdict: {@link TwoTripRule} decides each drive,
 * {@link VerificationState} counts. The same input gives the same verdict, whatever order it arrived in.
 */
public final class Verification {

    private static final Comparator<RepairAttempt> BY_TIME =
            Comparator.comparing(RepairAttempt::at).thenComparing(RepairAttempt::id);
    static final Comparator<DriveRecord> BY_START =
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
        return fold(fault, repairs, drives).verdict();
    }

    /** The same, ready for more drives. */
    public FaultFold fold(RepairedFault fault, List<RepairAttempt> repairs, List<DriveRecord> drives) {
        return FaultFold.of(fault, rules, repairs.stream().sorted(BY_TIME).toList(), onceEach(drives));
    }

    private static List<DriveRecord> onceEach(List<DriveRecord> drives) {
        var seen = new java.util.HashSet<String>();
        return drives.stream()
                .sorted(BY_START)
                .filter(drive -> seen.add(drive.id()))
                .toList();
    }
}
