package dev.stayfixed.judging;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.verification.FaultFold;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Verification;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A fault, folded over the drives of its vehicle.
 *
 * @param repairs as it was folded with
 * @param opening likewise
 */
record FoldedFault(RepairedFault fault, List<RepairAttempt> repairs, Optional<DriveRecord> opening, FaultFold fold) {

    static FoldedFault of(FaultCase judged, List<DriveRecord> drives, Verification verification) {
        Optional<DriveRecord> opening = opening(judged);
        List<DriveRecord> all = new ArrayList<>(drives);
        opening.ifPresent(all::add);
        return new FoldedFault(
                judged.fault(), judged.repairs(), opening, verification.fold(judged.fault(), judged.repairs(), all));
    }

    /** Whether it is what this fault would be folded to. */
    boolean isOf(FaultCase judged) {
        return fault.equals(judged.fault()) && repairs.equals(judged.repairs()) && opening.equals(opening(judged));
    }

    FoldedFault and(DriveRecord drive) {
        return new FoldedFault(fault, repairs, opening, fold.and(drive));
    }

    /**
     * The scan with which the job was opened tells what was stored by then, like a drive from before the repair. It is only that:
     * where a repair of the fault is dated before the opening, it is left out, as nobody drove.
     */
    private static Optional<DriveRecord> opening(FaultCase fault) {
        Instant opened = fault.job().openedAt();
        return fault.job()
                .scan()
                .filter(scan ->
                        fault.repairs().stream().allMatch(repair -> repair.at().isAfter(opened)))
                .map(scan -> new DriveRecord(
                        "opening of " + fault.jobId(),
                        opened,
                        Optional.empty(),
                        DriveSummary.UNKNOWN,
                        false,
                        List.of(new DriveRecord.TimedScan(DriveRecord.Moment.AFTER, scan))));
    }
}
