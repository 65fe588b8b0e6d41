package dev.stayfixed.jobs;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.StateName;
import jakarta.persistence.CascadeType;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.OneToMany;
import jakarta.persistence.OrderBy;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;

/** The row of a job, and the rules of its life. */
@Entity
@Table(name = "job")
class StoredJob {

    @Id
    @GeneratedValue(strategy = GenerationType.UUID)
    private @Nullable UUID id;

    @TenantId
    @Column(name = "shop_id")
    private @Nullable UUID shopId;

    @ManyToOne(fetch = FetchType.LAZY)
    private StoredVehicle vehicle;

    private @Nullable String reference;
    private @Nullable String complaint;
    private @Nullable String customer;
    private Instant openedAt;

    @Enumerated(EnumType.STRING)
    private Job.State state;

    private @Nullable Instant closedAt;
    private @Nullable String closeReason;
    private @Nullable String scan;
    private int version;

    @OneToMany(mappedBy = "job", cascade = CascadeType.PERSIST)
    @OrderBy("position")
    private List<StoredFault> faults = new ArrayList<>();

    @OneToMany(mappedBy = "job", cascade = CascadeType.PERSIST)
    private List<StoredRepair> repairs = new ArrayList<>();

    @ElementCollection
    @CollectionTable(name = "job_state_change", joinColumns = @JoinColumn(name = "job_id"))
    @OrderColumn(name = "position")
    private List<StoredStateChange> stateChanges = new ArrayList<>();

    protected StoredJob() {}

    StoredJob(StoredVehicle vehicle, Job.Opening opening) {
        this.vehicle = vehicle;
        this.openedAt = opening.openedAt();
        this.state = Job.State.OPEN;
        this.scan = opening.scan().orElse(null);
        label(opening.labels());
        opening.faults().forEach(this::addFault);
        this.version = 1;
    }

    final void label(Job.Labels labels) {
        reference = labels.reference().orElse(null);
        complaint = labels.complaint().orElse(null);
        customer = labels.customer().orElse(null);
        changed();
    }

    final StoredFault addFault(RepairedFault terms) {
        refuseWhenClosed();
        faults.stream()
                .filter(f -> f.code().sameFaultAs(terms.code()))
                .findFirst()
                .ifPresent(f -> {
                    throw new Refused(
                            ProblemType.FAULT_EXISTS,
                            "code: found " + terms.code().text() + ", which this job already has as "
                                    + f.code().text() + "; record another repair of that fault instead");
                });
        StoredFault fault = new StoredFault(this, faults.size(), terms);
        faults.add(fault);
        changed();
        return fault;
    }

    StoredRepair addRepair(Set<UUID> faultIds, Repair.Details details, Instant now) {
        refuseWhenClosed();
        StoredRepair repair = new StoredRepair(this, faultIds, details, now);
        repairs.add(repair);
        changed();
        return repair;
    }

    /** Puts the record of a repair right; says whether anything differs. */
    boolean correctRepair(
            UUID repairId, UnaryOperator<Repair.Details> right, Repair.Correction correction, Instant now) {
        refuseWhenClosed();
        StoredRepair repair = repair(repairId);
        boolean differs = repair.correct(right.apply(repair.facts().details()), correction, now);
        if (differs) {
            changed();
        }
        return differs;
    }

    StoredRepair repair(UUID repairId) {
        return repairs.stream()
                .filter(r -> r.id().equals(repairId))
                .findFirst()
                .orElseThrow(() -> Refused.notFound("repair of this job", repairId));
    }

    void close(Optional<String> reason, Instant now) {
        refuseWhenClosed();
        String undecided = faults.stream()
                .filter(f -> f.standing().state() != StateName.CONFIRMED_FIXED)
                .map(f -> f.code().text() + " (" + f.standing().words() + ")")
                .collect(Collectors.joining(", "));
        if (!undecided.isEmpty() && reason.isEmpty()) {
            throw new Refused(
                    ProblemType.FAULT_UNDECIDED,
                    "not confirmed fixed: " + undecided
                            + "; wait for the drives that are still needed, or give a reason");
        }
        state = Job.State.CLOSED;
        closedAt = now;
        closeReason = reason.orElse(null);
        remember(now, closeReason);
    }

    void reopen(String reason, Instant now) {
        if (state == Job.State.OPEN) {
            throw new Refused(ProblemType.JOB_OPEN, "the job is open; only a closed job can be reopened");
        }
        state = Job.State.OPEN;
        closedAt = null;
        closeReason = null;
        remember(now, reason);
    }

    private void remember(Instant now, @Nullable String reason) {
        stateChanges.add(new StoredStateChange(now, state, reason));
        changed();
    }

    final void refuseWhenClosed() {
        if (state == Job.State.CLOSED) {
            throw new Refused(
                    ProblemType.JOB_CLOSED,
                    "the job was closed at " + closedAt + "; reopen it with a reason before changing it");
        }
    }

    /** Whatever a reader of the job can see has changed. */
    final void changed() {
        version++;
    }

    UUID id() {
        return Objects.requireNonNull(id);
    }

    int version() {
        return version;
    }

    Instant openedAt() {
        return openedAt;
    }

    Ignition ignition() {
        return vehicle.ignition();
    }

    StoredVehicle vehicle() {
        return vehicle;
    }

    List<StoredFault> faults() {
        return faults;
    }

    StoredFault fault(UUID faultId) {
        return faults.stream()
                .filter(f -> f.id().equals(faultId))
                .findFirst()
                .orElseThrow(() -> Refused.notFound("fault of this job", faultId));
    }

    List<StoredRepair> repairs() {
        return repairs.stream()
                .sorted(Comparator.comparing(StoredRepair::performedAt).thenComparing(StoredRepair::id))
                .toList();
    }

    /** What the judging of its faults needs of it. */
    FaultCase.OfJob ofFaults() {
        return new FaultCase.OfJob(
                id(),
                openedAt,
                Optional.ofNullable(closedAt),
                Optional.ofNullable(scan).map(Scan::read));
    }

    Job facts() {
        Ignition ignition = ignition();
        return new Job(
                id(),
                version,
                vehicle.id(),
                new Job.Labels(
                        Optional.ofNullable(reference), Optional.ofNullable(complaint), Optional.ofNullable(customer)),
                state,
                openedAt,
                Optional.ofNullable(closedAt),
                Optional.ofNullable(closeReason),
                faults.stream().map(f -> f.facts(ignition)).toList(),
                repairs().stream().map(StoredRepair::facts).toList(),
                Optional.ofNullable(scan));
    }
}
