package dev.stayfixed.judging;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.jobs.EngineCheck;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.jobs.FaultConditions;
import dev.stayfixed.jobs.FaultHistory;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.obd.InUseCounters;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.Abilities;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.WaysToProve;
import dev.stayfixed.verification.bench.BenchMeasurement;
import dev.stayfixed.verification.bench.BenchProof;
import dev.stayfixed.verification.bench.BenchRuns;
import dev.stayfixed.verification.confidence.AllClear;
import dev.stayfixed.verification.confidence.InUseRatio;
import dev.stayfixed.verification.held.HeldStretch;
import dev.stayfixed.verification.inspection.InspectionOutlook;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * All that is stored of one vehicle, read at one moment. What pages, answers and reports say of its faults follows from this and from
 * nothing else. For one request and one thread.
 */
public final class CaseFile {

    private final Vehicle vehicle;
    private final List<Job> jobs;
    private final List<FaultCase> cases;
    private final List<FaultConditions> conditions;
    private final Map<UUID, FaultHistory> histories;
    private final List<DriveRecord> drives;
    private final List<EngineCheck> checks;
    private final Folding.Reading reading;

    /**
     * @param jobs of the vehicle, the latest first
     * @param cases of every fault of these jobs
     * @param conditions likewise
     * @param histories of the faults of which a shop stated one
     * @param checks with the engine running, that were stated for these faults
     * @param reading of all these faults
     */
    CaseFile(
            Vehicle vehicle,
            List<Job> jobs,
            List<FaultCase> cases,
            List<FaultConditions> conditions,
            Map<UUID, FaultHistory> histories,
            List<EngineCheck> checks,
            Folding.Reading reading) {
        this.vehicle = vehicle;
        this.jobs = jobs;
        this.cases = cases;
        this.conditions = conditions;
        this.histories = histories;
        this.checks = checks;
        this.drives = reading.drives();
        this.reading = reading;
    }

    public Vehicle vehicle() {
        return vehicle;
    }

    /**
     * One job of the vehicle.
     *
     * @throws Refused when it has no such job
     */
    public Job job(UUID jobId) {
        return jobs.stream()
                .filter(job -> job.id().equals(jobId))
                .findFirst()
                .orElseThrow(() -> Refused.notFound("job", jobId));
    }

    /** Of every fault of every job of the vehicle. */
    public List<FaultVerdict> verdicts() {
        return jobs.stream().flatMap(job -> verdicts(job.id()).stream()).toList();
    }

    public List<FaultVerdict> verdicts(UUID jobId) {
        return reading.verdicts().stream()
                .filter(verdict -> verdict.faultCase().jobId().equals(jobId))
                .toList();
    }

    /**
     * Where one fault stands, and why.
     *
     * @throws Refused when the job has no such fault
     */
    public FaultVerdict verdict(UUID jobId, UUID faultId) {
        return verdicts(jobId).stream()
                .filter(verdict -> verdict.faultCase().faultId().equals(faultId))
                .findFirst()
                .orElseThrow(() -> Refused.notFound("fault of this job", faultId));
    }

    private List<FaultCase> cases(UUID jobId) {
        return cases.stream().filter(found -> found.jobId().equals(jobId)).toList();
    }

    /** The bench proof of each fault of a job, and how long its repair has held; by the fault's id. */
    public Map<UUID, FaultProofs> proofs(UUID jobId) {
        Map<UUID, FaultProofs> proofs = new LinkedHashMap<>();
        cases(jobId).forEach(found -> proofs.put(found.faultId(), proofs(found)));
        return proofs;
    }

    private FaultProofs proofs(FaultCase fault) {
        Optional<RepairAttempt> latest = latest(fault);
        return new FaultProofs(
                latest.map(repair -> BenchProof.of(measured(fault, repair), runs(fault))),
                latest.map(repair -> HeldStretch.of(repair, Optional.empty(), drives)));
    }

    private static Optional<RepairAttempt> latest(FaultCase fault) {
        return fault.repairs().stream().max(Comparator.comparing(RepairAttempt::at));
    }

    private List<BenchMeasurement> measured(FaultCase fault, RepairAttempt repair) {
        return job(fault.jobId()).repairs().stream()
                .filter(recorded -> recorded.id().toString().equals(repair.id()))
                .flatMap(recorded -> recorded.details().measurements().stream())
                .map(Measurement::atTheBench)
                .toList();
    }

    private List<BenchRuns> runs(FaultCase fault) {
        return checks(fault.jobId()).stream()
                .filter(check -> check.stated().faultId().equals(fault.faultId()))
                .filter(FaultCheck::counts)
                .map(FaultCheck::runs)
                .toList();
    }

    /** The checks with the engine running of a job, as they were stated, with the runs that count for the latest repair. */
    public List<FaultCheck> checks(UUID jobId) {
        return cases(jobId).stream()
                .flatMap(fault -> checks.stream()
                        .filter(check -> check.faultId().equals(fault.faultId()))
                        .map(check -> FaultCheck.of(check, latest(fault).map(RepairAttempt::at), reading.revisions())))
                .toList();
    }

    /**
     * One of them.
     *
     * @throws Refused when the job has no such check
     */
    public FaultCheck check(UUID jobId, UUID checkId) {
        return checks(jobId).stream()
                .filter(check -> check.stated().id().equals(checkId))
                .findFirst()
                .orElseThrow(() -> Refused.notFound("check of this job", checkId));
    }

    /** What will prove each fault of a job, with what the vehicle has shown that it answers; by the fault's id. */
    public Map<UUID, WaysToProve> ways(UUID jobId) {
        Abilities abilities = WaysOfFaults.abilities(job(jobId), cases(jobId), drives, vehicle);
        Map<UUID, WaysToProve> ways = new LinkedHashMap<>();
        cases(jobId)
                .forEach(found -> ways.put(
                        found.faultId(),
                        WaysToProve.of(found.fault(), abilities, WaysOfFaults.isCleared(found.repairs()))));
        return ways;
    }

    /** How many drives the faults that are not decided are likely to take, by the car's own count; by the fault's id. */
    public Map<UUID, Reason> likelyDrives(UUID jobId) {
        Optional<InUseCounters> counted = WaysOfFaults.lastCounted(job(jobId), cases(jobId), drives);
        Map<UUID, Reason> likely = new LinkedHashMap<>();
        verdicts(jobId).stream()
                .filter(verdict -> !verdict.standing().decided())
                .forEach(verdict -> {
                    RepairedFault fault = verdict.faultCase().fault();
                    int left = fault.requiredPasses() - verdict.verdict().passesInARow();
                    counted.flatMap(counters -> InUseRatio.likely(fault.code(), counters, Math.max(1, left)))
                            .ifPresent(reason -> likely.put(verdict.faultCase().faultId(), reason));
                });
        return likely;
    }

    /** The drives that the open faults of a job still need. */
    public NextDrives.Outline nextDrives(UUID jobId) {
        List<DriveSummary> past = drives.stream().map(DriveRecord::summary).toList();
        return NextDrives.outline(verdicts(jobId), this::conditions, past);
    }

    /**
     * The conditions that were agreed for a fault, if any.
     *
     * @throws Refused when no job of the vehicle has such a fault
     */
    public FaultConditions conditions(UUID faultId) {
        return conditions.stream()
                .filter(found -> found.faultId().equals(faultId))
                .findFirst()
                .orElseThrow(() -> Refused.notFound("fault of this vehicle", faultId));
    }

    /** How sure an all-clear is, for a fault that failed only now and then. */
    public AllClear allClear(UUID jobId, UUID faultId) {
        int cleanTrips = verdict(jobId, faultId).verdict().passesInARow();
        FaultHistory history = histories.getOrDefault(faultId, FaultHistory.UNKNOWN);
        return new AllClear(history.before(), history.wantedConfidence(), cleanTrips);
    }

    /** What an inspection would likely say of the vehicle, by each rule we know; advisory only. */
    public List<InspectionOutlook> inspection() {
        return Inspections.outlook(vehicle, cases, drives);
    }

    /** What the drives showed that nobody knew before, and that still stands; the earliest first. */
    public List<Alert> alerts() {
        return reading.alerts();
    }
}
