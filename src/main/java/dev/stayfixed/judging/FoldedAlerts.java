package dev.stayfixed.judging;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.RepairAttempt;
import java.util.List;
import java.util.Optional;

/**
 * The alerts of a vehicle, gone through.
 *
 * @param told what was known beside the drives
 */
record FoldedAlerts(List<Told> told, Alerts alerts) {

    /** A fault, as far as alerts look at it. */
    record Told(TroubleCode code, FaultCase.OfJob job, List<RepairAttempt> repairs) {
        static List<Told> of(List<FaultCase> faults) {
            return faults.stream()
                    .map(fault -> new Told(fault.fault().code(), fault.job(), fault.repairs()))
                    .toList();
        }
    }

    static FoldedAlerts of(List<FaultCase> faults, List<DriveRecord> drives) {
        return new FoldedAlerts(Told.of(faults), Alerts.goneThrough(drives, faults));
    }

    boolean isOf(List<FaultCase> faults) {
        return told.equals(Told.of(faults));
    }

    /** Empty where all has to be gone through again. */
    Optional<FoldedAlerts> and(DriveRecord drive) {
        return alerts.and(drive).map(more -> new FoldedAlerts(told, more));
    }
}
