package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Standings;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.verification.Abilities;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.WaysToProve;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Service;

/** What will prove each fault of a job, with what its vehicle has shown that it answers. */
@Service
public class WaysOfFaults {

    private final Jobs jobs;
    private final Vehicles vehicles;
    private final Standings standings;
    private final Originals originals;
    private final Durably durably;

    WaysOfFaults(Jobs jobs, Vehicles vehicles, Standings standings, Originals originals, Durably durably) {
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.standings = standings;
        this.originals = originals;
        this.durably = durably;
    }

    /** By the id of the fault. */
    public Map<UUID, WaysToProve> ofJob(UUID jobId) {
        return durably.read(() -> {
            Job job = jobs.get(jobId);
            List<FaultCase> cases = standings.ofJob(jobId);
            Abilities abilities = Abilities.shownBy(
                    scans(job, cases), vehicles.get(job.vehicleId()).details().modelYear());
            Map<UUID, WaysToProve> ways = new LinkedHashMap<>();
            cases.forEach(found ->
                    ways.put(found.faultId(), WaysToProve.of(found.fault(), abilities, isCleared(found.repairs()))));
            return ways;
        });
    }

    private List<Scan> scans(Job job, List<FaultCase> cases) {
        Stream<Scan> opening = job.scan().map(Scan::read).stream();
        Stream<Scan> repairs = cases.stream()
                .flatMap(found -> found.repairs().stream())
                .flatMap(repair -> Stream.concat(repair.scanBefore().stream(), repair.scanAfter().stream()));
        Stream<Scan> drives = originals.drivesOf(job.vehicleId()).stream()
                .flatMap(drive -> drive.record().scans().stream())
                .map(DriveRecord.TimedScan::scan);
        return Stream.of(opening, repairs, drives).flatMap(scans -> scans).toList();
    }

    private static boolean isCleared(List<RepairAttempt> repairs) {
        return repairs.stream()
                .max(Comparator.comparing(RepairAttempt::at))
                .filter(RepairAttempt::codesCleared)
                .isPresent();
    }
}
