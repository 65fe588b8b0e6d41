package dev.stayfixed.jobs;

import dev.stayfixed.obd.Scan;
import dev.stayfixed.verification.RepairAttempt;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;

/** The row of a repair. What is put right in it is remembered beside it. */
@Entity
@Table(name = "repair")
class StoredRepair {

    @Id
    @GeneratedValue(strategy = GenerationType.UUID)
    private @Nullable UUID id;

    @TenantId
    @Column(name = "shop_id")
    private @Nullable UUID shopId;

    /** Written to the row, read through the job. */
    @SuppressWarnings("UnusedVariable")
    @ManyToOne(fetch = FetchType.LAZY)
    private StoredJob job;

    private Instant performedAt;

    @Column(name = "recorded_at")
    private Instant recordedAt;

    private String description;
    private @Nullable String technician;
    private boolean codesCleared;
    private @Nullable String scanBefore;
    private @Nullable String scanAfter;

    @ElementCollection
    @CollectionTable(name = "repair_fault", joinColumns = @JoinColumn(name = "repair_id"))
    @Column(name = "fault_id")
    private Set<UUID> faultIds = new HashSet<>();

    @ElementCollection
    @CollectionTable(name = "repair_part", joinColumns = @JoinColumn(name = "repair_id"))
    @OrderColumn(name = "position")
    @Column(name = "part")
    private List<String> parts = new ArrayList<>();

    @ElementCollection
    @CollectionTable(name = "measurement", joinColumns = @JoinColumn(name = "repair_id"))
    @OrderColumn(name = "position")
    private List<StoredMeasurement> measurements = new ArrayList<>();

    @ElementCollection
    @CollectionTable(name = "repair_change", joinColumns = @JoinColumn(name = "repair_id"))
    @OrderColumn(name = "position")
    private List<StoredRepairChange> changes = new ArrayList<>();

    protected StoredRepair() {}

    StoredRepair(StoredJob job, Set<UUID> faultIds, Repair.Details details, Instant recordedAt) {
        this.job = job;
        this.recordedAt = recordedAt;
        this.performedAt = details.performedAt();
        this.description = details.description();
        this.faultIds.addAll(faultIds);
        write(details);
    }

    private void write(Repair.Details details) {
        performedAt = details.performedAt();
        description = details.description();
        technician = details.technician().orElse(null);
        codesCleared = details.codesCleared();
        scanBefore = details.scanBefore().orElse(null);
        scanAfter = details.scanAfter().orElse(null);
        parts.clear();
        parts.addAll(details.parts());
        measurements.clear();
        details.measurements().forEach(m -> measurements.add(StoredMeasurement.of(m)));
    }

    /** Puts the record right and remembers what stood there; says whether anything differs. */
    boolean correct(Repair.Details right, Repair.Correction correction, Instant now) {
        List<Repair.Change> found = Repair.between(details(), right, correction, now);
        found.forEach(change -> changes.add(StoredRepairChange.of(change)));
        if (!found.isEmpty()) {
            write(right);
        }
        return !found.isEmpty();
    }

    String description() {
        return description;
    }

    UUID id() {
        return Objects.requireNonNull(id);
    }

    Instant performedAt() {
        return performedAt;
    }

    boolean isFor(UUID faultId) {
        return faultIds.contains(faultId);
    }

    RepairAttempt attempt() {
        return new RepairAttempt(
                id().toString(),
                performedAt,
                codesCleared,
                Optional.ofNullable(scanBefore).map(Scan::read),
                Optional.ofNullable(scanAfter).map(Scan::read));
    }

    private Repair.Details details() {
        return new Repair.Details(
                performedAt,
                description,
                parts,
                Optional.ofNullable(technician),
                codesCleared,
                Optional.ofNullable(scanBefore),
                Optional.ofNullable(scanAfter),
                measurements.stream().map(StoredMeasurement::facts).toList());
    }

    Repair facts() {
        return new Repair(
                id(),
                Set.copyOf(faultIds),
                details(),
                changes.stream().map(StoredRepairChange::facts).toList());
    }
}
