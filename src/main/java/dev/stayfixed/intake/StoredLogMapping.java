package dev.stayfixed.intake;

import dev.stayfixed.archive.LogMappingForm;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

/** The row of a mapping. */
@Entity
@Table(name = "log_mapping")
class StoredLogMapping {

    private static final JsonMapper JSON = JsonMapper.shared();

    @Id
    @GeneratedValue(strategy = GenerationType.UUID)
    private @Nullable UUID id;

    @TenantId
    @Column(name = "shop_id")
    private @Nullable UUID shopId;

    private String name;

    @SuppressWarnings("UnusedVariable") // it is searched by
    private String fingerprint;

    private String headers;
    private String mapping;
    private Instant createdAt;

    protected StoredLogMapping() {}

    StoredLogMapping(String name, String fingerprint, List<String> headers, LogMappingForm mapping, Instant createdAt) {
        this.name = name;
        this.fingerprint = fingerprint;
        this.headers = JSON.writeValueAsString(headers);
        this.mapping = JSON.writeValueAsString(mapping);
        this.createdAt = createdAt;
    }

    UUID id() {
        return Objects.requireNonNull(id);
    }

    /** From now on it is known with whose log it was confirmed. */
    void confirmedFor(UUID vehicleId) {
        LogMappingForm form = facts().mapping();
        mapping = JSON.writeValueAsString(form.with(form.separator(), vehicleId));
    }

    SavedMapping facts() {
        return new SavedMapping(
                id(),
                name,
                List.of(JSON.readValue(headers, String[].class)),
                JSON.readValue(mapping, LogMappingForm.class),
                createdAt);
    }
}
