package dev.stayfixed.archive;

import dev.stayfixed.recording.LogMapping;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

/** The row of a submission: written once, complete in itself, never changed. */
@Entity
@Table(name = "submission")
class StoredSubmission {

    private static final JsonMapper JSON = JsonMapper.shared();

    @Id
    @GeneratedValue(strategy = GenerationType.UUID)
    private @Nullable UUID id;

    @TenantId
    @Column(name = "shop_id")
    private @Nullable UUID shopId;

    private UUID vehicleId;
    private UUID driveId;
    private int revision;
    private Instant receivedAt;
    private String contentType;

    @Column(name = "digest")
    private String digest;

    /** gzip */
    private byte[] original;

    private @Nullable String logType;
    private @Nullable String logMapping;

    protected StoredSubmission() {}

    /** A log and how it was read. */
    record Log(String mediaType, LogMapping mapping) {}

    StoredSubmission(
            UUID vehicleId,
            UUID driveId,
            int revision,
            Instant receivedAt,
            Original original,
            String digest,
            Optional<Log> log) {
        this.vehicleId = vehicleId;
        this.driveId = driveId;
        this.revision = revision;
        this.receivedAt = receivedAt;
        this.contentType = original.contentType();
        this.digest = digest;
        this.original = packed(original.text());
        this.logType = log.map(Log::mediaType).orElse(null);
        this.logMapping = log.map(l -> JSON.writeValueAsString(LogMappingForm.of(l.mapping())))
                .orElse(null);
    }

    UUID id() {
        return Objects.requireNonNull(id);
    }

    /** Empty where no log was sent. */
    Optional<Log> log() {
        return logType == null || logMapping == null
                ? Optional.empty()
                : Optional.of(new Log(
                        logType,
                        JSON.readValue(logMapping, LogMappingForm.class).facts("mapping")));
    }

    UUID vehicleId() {
        return vehicleId;
    }

    UUID driveId() {
        return driveId;
    }

    int revision() {
        return revision;
    }

    Instant receivedAt() {
        return receivedAt;
    }

    Original original() {
        return new Original(contentType, unpacked(original));
    }

    private static byte[] packed(String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(bytes)) {
            gzip.write(text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static String unpacked(byte[] packed) {
        try (GZIPInputStream gzip = new GZIPInputStream(new ByteArrayInputStream(packed))) {
            return new String(gzip.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
