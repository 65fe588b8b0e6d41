package dev.stayfixed.archive;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.PostLoad;
import jakarta.persistence.PostPersist;
import jakarta.persistence.Table;
import jakarta.persistence.Transient;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import tools.jackson.databind.json.JsonMapper;

/** The row by which a drive is found; all of it can be computed from the submissions. */
@Entity
@Table(name = "drive")
class StoredDrive implements Persistable<UUID> {

    private static final JsonMapper JSON =
            JsonMapper.builder().addModule(StoredReason.module()).build();

    @Id
    private UUID id;

    @TenantId
    @Column(name = "shop_id")
    private @Nullable UUID shopId;

    private UUID vehicleId;
    private Instant startAt;

    @SuppressWarnings("UnusedVariable") // for whoever looks into the table
    private Instant untilAt;

    private Instant receivedAt;
    private int revision;

    private @Nullable String logFacts;
    private @Nullable Integer logFactsVersion;
    private @Nullable Integer logFactsRevision;

    @Transient
    private boolean stored;

    protected StoredDrive() {}

    StoredDrive(UUID id, UUID vehicleId, Instant receivedAt, ReadDrive drive) {
        this.id = id;
        this.vehicleId = vehicleId;
        this.receivedAt = receivedAt;
        file(drive, 1);
    }

    /** Puts the drive where its latest submission says that it was. */
    final void file(ReadDrive drive, int latestRevision) {
        startAt = drive.record().start();
        untilAt = drive.until();
        revision = latestRevision;
        logFacts = drive.log().map(JSON::writeValueAsString).orElse(null);
        logFactsVersion = drive.log().isPresent() ? LogFacts.VERSION : null;
        logFactsRevision = drive.log().isPresent() ? latestRevision : null;
    }

    /** What was read from the log of this revision, where that was kept and is still what we would read today. */
    Optional<LogFacts> logFacts(int wanted) {
        return logFacts != null
                        && logFactsVersion != null
                        && logFactsVersion == LogFacts.VERSION
                        && logFactsRevision != null
                        && logFactsRevision == wanted
                ? Optional.of(JSON.readValue(logFacts, LogFacts.class))
                : Optional.empty();
    }

    @PostPersist
    @PostLoad
    void markStored() {
        stored = true;
    }

    @Override
    public UUID getId() {
        return id;
    }

    @Override
    public boolean isNew() {
        return !stored;
    }

    Filed filed() {
        return new Filed(id, revision, vehicleId, startAt, receivedAt);
    }

    int revision() {
        return revision;
    }
}
