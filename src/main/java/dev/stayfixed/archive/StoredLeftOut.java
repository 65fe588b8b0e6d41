package dev.stayfixed.archive;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;

/** The row that keeps a drive out of the count; what was taken in again stays as history. */
@Entity
@Table(name = "drive_left_out")
class StoredLeftOut {

    @Id
    @GeneratedValue(strategy = GenerationType.UUID)
    private @Nullable UUID id;

    @TenantId
    @Column(name = "shop_id")
    private @Nullable UUID shopId;

    @SuppressWarnings("UnusedVariable") // it is searched by
    private UUID vehicleId;

    private UUID driveId;
    private String reason;
    private Instant leftOutAt;

    @SuppressWarnings("UnusedVariable") // it is searched by
    private @Nullable Instant takenInAt;

    protected StoredLeftOut() {}

    StoredLeftOut(UUID vehicleId, UUID driveId, LeftOut leftOut) {
        this.vehicleId = vehicleId;
        this.driveId = driveId;
        this.reason = leftOut.reason();
        this.leftOutAt = leftOut.at();
    }

    void takenIn(Instant at) {
        takenInAt = at;
    }

    UUID driveId() {
        return driveId;
    }

    LeftOut facts() {
        return new LeftOut(reason, leftOutAt);
    }
}
