package dev.stayfixed.judging;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.inspection.InspectionOutlook;
import dev.stayfixed.verification.inspection.InspectionRecord;
import dev.stayfixed.verification.inspection.InspectionRule;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** What an inspection would likely say of a vehicle, by each rule we know; advisory only. */
final class Inspections {

    private Inspections() {}

    /** @param faults of every job of the vehicle */
    static List<InspectionOutlook> outlook(Vehicle vehicle, List<FaultCase> faults, List<DriveRecord> drives) {
        InspectionRecord record = record(vehicle, faults, drives);
        return Stream.of(InspectionRule.values())
                .map(rule -> rule.outlook(record))
                .toList();
    }

    private static InspectionRecord record(Vehicle vehicle, List<FaultCase> faults, List<DriveRecord> drives) {
        List<RepairAttempt> repairs =
                faults.stream().map(FaultCase::repairs).flatMap(List::stream).toList();
        Instant lastClear = repairs.stream()
                .filter(RepairAttempt::codesCleared)
                .map(RepairAttempt::at)
                .max(Comparator.naturalOrder())
                .orElse(Instant.MIN);
        List<Scan> scans = Stream.of(ofOpenings(faults), ofRepairs(repairs), ofDrives(drives))
                .flatMap(dated -> dated)
                .filter(dated -> !dated.at().isBefore(lastClear))
                .sorted(Comparator.comparing(Dated::at))
                .map(Dated::scan)
                .toList();
        return InspectionRecord.of(modelYear(vehicle), vehicle.details().ignition(), scans);
    }

    private record Dated(Instant at, Scan scan) {}

    private static Stream<Dated> ofOpenings(List<FaultCase> faults) {
        return faults.stream()
                .map(FaultCase::job)
                .distinct()
                .flatMap(job -> job.scan().map(scan -> new Dated(job.openedAt(), scan)).stream());
    }

    /** A scan from before a repair belongs to the moment before it, so a clear at the repair leaves it out. */
    private static Stream<Dated> ofRepairs(List<RepairAttempt> repairs) {
        return repairs.stream()
                .flatMap(repair -> Stream.concat(
                        repair.scanBefore().stream()
                                .map(scan -> new Dated(repair.at().minusNanos(1), scan)),
                        repair.scanAfter().stream().map(scan -> new Dated(repair.at(), scan))));
    }

    private static Stream<Dated> ofDrives(List<DriveRecord> drives) {
        return drives.stream()
                .flatMap(drive -> Stream.of(DriveRecord.Moment.values())
                        .flatMap(moment -> drive.scans(moment).stream())
                        .map(scan -> new Dated(drive.start(), scan)));
    }

    private static OptionalInt modelYear(Vehicle vehicle) {
        OptionalInt stated = vehicle.details().modelYear();
        return stated.isPresent()
                ? stated
                : vehicle.details().vin().map(Vin::modelYear).orElse(OptionalInt.empty());
    }
}
