package dev.stayfixed.judging;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.obd.InUseCounters;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.verification.Abilities;
import dev.stayfixed.verification.RepairAttempt;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What will prove the faults of a job rests on what its vehicle has shown that it answers. */
final class WaysOfFaults {

    private WaysOfFaults() {}

    static Abilities abilities(Job job, List<FaultCase> cases, List<DriveRecord> drives, Vehicle vehicle) {
        return Abilities.shownBy(scans(job, cases, drives), vehicle.details().modelYear());
    }

    /** The in-use counters of the last scan that read them. */
    static Optional<InUseCounters> lastCounted(Job job, List<FaultCase> cases, List<DriveRecord> drives) {
        return scans(job, cases, drives).stream()
                .flatMap(scan -> scan.inUse().stream())
                .reduce((first, second) -> second);
    }

    private static List<Scan> scans(Job job, List<FaultCase> cases, List<DriveRecord> recorded) {
        Stream<Scan> opening = job.scan().map(Scan::read).stream();
        Stream<Scan> repairs = cases.stream()
                .flatMap(found -> found.repairs().stream())
                .flatMap(repair -> Stream.concat(repair.scanBefore().stream(), repair.scanAfter().stream()));
        Stream<Scan> drives =
                recorded.stream().flatMap(drive -> drive.scans().stream()).map(DriveRecord.TimedScan::scan);
        return Stream.of(opening, repairs, drives).flatMap(scans -> scans).toList();
    }

    /** Codes were cleared at the latest repair. */
    static boolean isCleared(List<RepairAttempt> repairs) {
        return repairs.stream()
                .max(Comparator.comparing(RepairAttempt::at))
                .filter(RepairAttempt::codesCleared)
                .isPresent();
    }
}
