package dev.stayfixed.jobs;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Vin;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;

/** The row of a vehicle. Everything that belongs to the vehicle is written while this row is locked. */
@Entity
@Table(name = "vehicle")
class StoredVehicle {

    @Id
    @GeneratedValue(strategy = GenerationType.UUID)
    private @Nullable UUID id;

    @TenantId
    @Column(name = "shop_id")
    private @Nullable UUID shopId;

    private @Nullable String vin;
    private @Nullable String plate;
    private String description;
    private @Nullable Integer modelYear;

    @Enumerated(EnumType.STRING)
    private Ignition ignition;

    private Instant createdAt;
    private int version;

    private @Nullable UUID drives;

    /** Asked for by the query for those that are due. */
    @SuppressWarnings("UnusedVariable")
    private @Nullable String judgedBy;

    protected StoredVehicle() {}

    StoredVehicle(Vehicle.Details details, Instant createdAt) {
        this.createdAt = createdAt;
        describe(details);
    }

    final void describe(Vehicle.Details details) {
        vin = details.vin().map(Vin::text).orElse(null);
        plate = details.plate().orElse(null);
        description = details.description();
        modelYear = details.modelYear().isPresent() ? details.modelYear().getAsInt() : null;
        ignition = details.ignition();
        version++;
    }

    Optional<UUID> drives() {
        return Optional.ofNullable(drives);
    }

    UUID otherDrives() {
        UUID other = UUID.randomUUID();
        drives = other;
        return other;
    }

    void judgedBy(String program) {
        judgedBy = program;
    }

    UUID id() {
        return Objects.requireNonNull(id);
    }

    int version() {
        return version;
    }

    Ignition ignition() {
        return ignition;
    }

    Vehicle facts() {
        return new Vehicle(
                id(),
                version,
                createdAt,
                new Vehicle.Details(
                        Optional.ofNullable(vin).map(Vin::parse),
                        Optional.ofNullable(plate),
                        description,
                        modelYear == null ? OptionalInt.empty() : OptionalInt.of(modelYear),
                        ignition));
    }
}
