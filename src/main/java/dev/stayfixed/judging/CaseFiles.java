package dev.stayfixed.judging;

import dev.stayfixed.jobs.EngineChecks;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.FaultHistories;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Standings;
import dev.stayfixed.jobs.VehicleFaults;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.storage.Durably;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;

/** Reads what is stored of a vehicle, in one transaction. */
@Service
public class CaseFiles {

    private final Vehicles vehicles;
    private final Jobs jobs;
    private final Standings standings;
    private final FaultHistories histories;
    private final EngineChecks checks;
    private final Folding folding;
    private final Durably durably;

    CaseFiles(
            Vehicles vehicles,
            Jobs jobs,
            Standings standings,
            FaultHistories histories,
            EngineChecks checks,
            Folding folding,
            Durably durably) {
        this.vehicles = vehicles;
        this.jobs = jobs;
        this.standings = standings;
        this.histories = histories;
        this.checks = checks;
        this.folding = folding;
        this.durably = durably;
    }

    /**
     * The file of the vehicle that a job is of.
     *
     * @throws dev.stayfixed.platform.problem.Refused when there is no such job
     */
    public CaseFile ofJob(UUID jobId) {
        return durably.read(() -> ofVehicle(jobs.get(jobId).vehicleId()));
    }

    /**
     * The file of a vehicle.
     *
     * @throws dev.stayfixed.platform.problem.Refused when there is no such vehicle
     */
    public CaseFile ofVehicle(UUID vehicleId) {
        return durably.read(() -> {
            VehicleFaults faults = standings.ofVehicle(vehicleId);
            List<FaultCase> cases = faults.cases();
            return new CaseFile(
                    vehicles.get(vehicleId),
                    jobs.ofVehicle(vehicleId),
                    cases,
                    faults.conditions(),
                    histories.of(cases.stream().map(FaultCase::faultId).collect(Collectors.toSet())),
                    checks.ofVehicle(vehicleId),
                    folding.read(vehicleId, faults));
        });
    }
}
