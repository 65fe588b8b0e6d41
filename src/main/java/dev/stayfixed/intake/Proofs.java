package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.jobs.Standings;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.bench.BenchProof;
import dev.stayfixed.verification.held.HeldStretch;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** The bench proof of each fault of a job, and how long its repair has held, from what is stored. */
@Service
public class Proofs {

    private final Jobs jobs;
    private final Standings standings;
    private final Originals originals;
    private final Durably durably;

    Proofs(Jobs jobs, Standings standings, Originals originals, Durably durably) {
        this.jobs = jobs;
        this.standings = standings;
        this.originals = originals;
        this.durably = durably;
    }

    /** By the fault's id. */
    public Map<UUID, FaultProofs> ofJob(UUID jobId) {
        return durably.read(() -> {
            Job job = jobs.get(jobId);
            List<DriveRecord> drives = originals.drivesOf(job.vehicleId()).stream()
                    .map(ReadDrive::record)
                    .toList();
            Map<UUID, FaultProofs> proofs = new LinkedHashMap<>();
            for (FaultCase fault : standings.ofJob(jobId)) {
                proofs.put(fault.faultId(), proofs(fault, job, drives));
            }
            return proofs;
        });
    }

    private static FaultProofs proofs(FaultCase fault, Job job, List<DriveRecord> drives) {
        Optional<RepairAttempt> latest = fault.repairs().stream().max(Comparator.comparing(RepairAttempt::at));
        return new FaultProofs(
                latest.map(repair -> BenchProof.of(job.repairs().stream()
                        .filter(recorded -> recorded.id().toString().equals(repair.id()))
                        .flatMap(recorded -> recorded.details().measurements().stream())
                        .map(Measurement::atTheBench)
                        .toList())),
                latest.map(repair -> HeldStretch.of(repair, Optional.empty(), drives)));
    }
}
