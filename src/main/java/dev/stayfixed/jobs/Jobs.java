package dev.stayfixed.jobs;

import dev.stayfixed.obd.Scan;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.verification.RepairedFault;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;

/** A job from its opening to its close: faults, repairs, and what the shop calls it. */
@Service
public class Jobs {

    private final StoredJobs jobs;
    private final StoredVehicles vehicles;
    private final JobParts parts;
    private final JobSearch search;
    private final Durably durably;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Jobs(
            StoredJobs jobs,
            StoredVehicles vehicles,
            JobParts parts,
            JobSearch search,
            Durably durably,
            ApplicationEventPublisher events,
            Clock clock) {
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.parts = parts;
        this.search = search;
        this.durably = durably;
        this.events = events;
        this.clock = clock;
    }

    /**
     * Opens a job.
     *
     * @throws Refused when neither the opening nor its scan names a fault
     */
    public Job open(Job.Opening opening) {
        return durably.write(() -> {
            StoredVehicle vehicle = vehicles.lock(opening.vehicleId())
                    .orElseThrow(() -> Refused.content(
                            new Mistake("vehicleId", opening.vehicleId(), "the id of a vehicle of this shop")));
            StoredJob job = jobs.save(new StoredJob(vehicle, withScan(opening, vehicle)));
            jobs.flush();
            file(job);
            moved(job, JobMoved.Step.OPENED);
            return job.facts();
        });
    }

    private static Job.Opening withScan(Job.Opening opening, StoredVehicle vehicle) {
        Optional<Scan> scan = opening.scan().map(Scan::read);
        List<RepairedFault> named = opening.faults().isEmpty() && scan.isPresent()
                ? ScannedFaults.of(scan.get(), vehicle.ignition())
                : opening.faults();
        if (named.isEmpty()) {
            throw Refused.content(new Mistake(
                    "faults", null, "at least one fault, or a scan with a confirmed or a pending code in it"));
        }
        List<RepairedFault> faults = scan.isEmpty()
                ? named
                : named.stream()
                        .map(f -> ScannedFaults.withFreezeFrame(f, scan.get()))
                        .toList();
        return new Job.Opening(opening.vehicleId(), opening.labels(), opening.openedAt(), opening.scan(), faults);
    }

    public Job get(UUID id) {
        return durably.read(() ->
                jobs.findById(id).orElseThrow(() -> Refused.notFound("job", id)).facts());
    }

    /** What was done at each repair of these jobs, in the shop's words, by the repair's id. */
    public Map<String, String> repairsOf(Set<UUID> ids) {
        return durably.read(() -> ids.stream()
                .flatMap(id -> jobs.findById(id).stream())
                .flatMap(job -> job.repairs().stream())
                .collect(Collectors.toMap(repair -> repair.id().toString(), StoredRepair::description)));
    }

    /**
     * Jobs in which a text occurs: reference, customer, code, anything that names the vehicle, or words of the complaint.
     *
     * @param text null for all
     */
    public Page<Job> search(Optional<Job.State> state, @Nullable String text, Page.Request page) {
        return durably.read(() -> {
            List<UUID> ids = search.page(state, text, page);
            Map<UUID, StoredJob> found =
                    jobs.findAllById(ids).stream().collect(Collectors.toMap(StoredJob::id, Function.identity()));
            return Page.of(
                            ids.stream()
                                    .flatMap(id -> Optional.ofNullable(found.get(id)).stream())
                                    .toList(),
                            page,
                            j -> new Page.Position(j.openedAt(), j.id()))
                    .map(StoredJob::facts);
        });
    }

    /** Jobs of a vehicle, the latest first. */
    public List<Job> ofVehicle(UUID vehicleId) {
        return durably.read(() -> {
            List<Job> found = new ArrayList<>(
                    jobs.ofVehicle(vehicleId).stream().map(StoredJob::facts).toList());
            Collections.reverse(found);
            return found;
        });
    }

    public Job relabel(UUID id, IfMatch ifMatch, Job.Labels labels) {
        return change(id, ifMatch, job -> {
            job.refuseWhenClosed();
            job.label(labels);
            file(job);
            return job.facts();
        });
    }

    public Fault addFault(UUID id, RepairedFault terms) {
        return durably.write(() -> {
            StoredJob job = held(id);
            StoredFault fault = job.addFault(terms);
            jobs.flush();
            file(job);
            moved(job, JobMoved.Step.FAULT_ADDED);
            return fault.facts(job.ignition());
        });
    }

    /** The same fault under other terms; its code stays, whatever the terms say. */
    public Job reviseFault(UUID id, UUID faultId, IfMatch ifMatch, RepairedFault terms) {
        return change(id, ifMatch, job -> {
            job.refuseWhenClosed();
            job.fault(faultId).agree(terms);
            job.changed();
            events.publishEvent(new EvidenceChanged(job.vehicle().id()));
            return job.facts();
        });
    }

    /**
     * Records a repair and judges again.
     *
     * @param faultIds empty for all faults of the job
     */
    public Repair recordRepair(UUID id, Set<UUID> faultIds, Repair.Details details) {
        return durably.write(() -> {
            StoredJob job = held(id);
            StoredRepair repair = job.addRepair(faultsOf(job, faultIds), details, clock.instant());
            jobs.flush();
            events.publishEvent(new EvidenceChanged(job.vehicle().id()));
            return repair.facts();
        });
    }

    /**
     * Puts the record of a repair right: what stood there is kept as history, and everything is judged again.
     *
     * @param right from the record as it stands to the record as it should be
     * @throws Refused when the job is closed, or was changed meanwhile
     */
    public Repair correctRepair(
            UUID id,
            UUID repairId,
            IfMatch ifMatch,
            Repair.Correction correction,
            UnaryOperator<Repair.Details> right) {
        return durably.write(() -> {
            StoredJob job = held(id);
            ifMatch.check(job.version());
            if (job.correctRepair(repairId, right, correction, clock.instant())) {
                jobs.flush();
                events.publishEvent(new RepairCorrected(job.vehicle().id()));
            }
            return job.repair(repairId).facts();
        });
    }

    private static Set<UUID> faultsOf(StoredJob job, Set<UUID> wanted) {
        Set<UUID> all = job.faults().stream().map(StoredFault::id).collect(Collectors.toSet());
        if (!all.containsAll(wanted)) {
            throw Refused.content(new Mistake("faultIds", wanted, "ids of faults of this job, which are " + all));
        }
        return wanted.isEmpty() ? all : wanted;
    }

    /**
     * Closes a job whose faults are confirmed fixed, or any job for a reason.
     *
     * @throws Refused naming the faults that are not confirmed fixed
     */
    public Job close(UUID id, IfMatch ifMatch, Optional<String> reason) {
        return change(id, ifMatch, job -> {
            job.close(reason, clock.instant());
            parts.move(id, Job.State.CLOSED);
            moved(job, JobMoved.Step.CLOSED);
            return job.facts();
        });
    }

    public Job reopen(UUID id, IfMatch ifMatch, String reason) {
        return change(id, ifMatch, job -> {
            job.reopen(reason, clock.instant());
            parts.move(id, Job.State.OPEN);
            moved(job, JobMoved.Step.REOPENED);
            return job.facts();
        });
    }

    private void file(StoredJob job) {
        parts.file(job.facts(), job.vehicle().facts().details());
    }

    private void moved(StoredJob job, JobMoved.Step step) {
        events.publishEvent(new JobMoved(job.vehicle().id(), job.id(), step, clock.instant()));
    }

    private Job change(UUID id, IfMatch ifMatch, Function<StoredJob, Job> change) {
        return durably.write(() -> {
            StoredJob job = held(id);
            ifMatch.check(job.version());
            return change.apply(job);
        });
    }

    /** The job, read after its vehicle was locked, so that nobody changes it meanwhile. */
    StoredJob held(UUID id) {
        UUID vehicleId = jobs.vehicleOf(id).orElseThrow(() -> Refused.notFound("job", id));
        if (vehicles.lock(vehicleId).isEmpty()) {
            throw Refused.notFound("vehicle", vehicleId);
        }
        return jobs.findById(id).orElseThrow(() -> Refused.notFound("job", id));
    }
}
