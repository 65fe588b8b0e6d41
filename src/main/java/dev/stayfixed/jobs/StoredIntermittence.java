package dev.stayfixed.jobs;

import dev.stayfixed.verification.confidence.Intermittence;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;

/** The row that says how often a fault failed before its repair. */
@Entity
@Table(name = "fault_intermittence")
class StoredIntermittence {

    @Id
    private UUID faultId;

    @TenantId
    @Column(name = "shop_id")
    private @Nullable UUID shopId;

    private int failed;
    private int monitored;
    private double confidence;

    protected StoredIntermittence() {}

    StoredIntermittence(UUID faultId, FaultHistory history) {
        this.faultId = faultId;
        state(history);
    }

    final void state(FaultHistory history) {
        failed = history.before().failed();
        monitored = history.before().monitored();
        confidence = history.wantedConfidence();
    }

    UUID faultId() {
        return faultId;
    }

    FaultHistory facts() {
        return new FaultHistory(new Intermittence(failed, monitored), confidence);
    }
}
