package dev.stayfixed.archive;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface StoredDrives extends JpaRepository<StoredDrive, UUID> {

    @Query("select d.vehicleId from StoredDrive d where d.id = :id")
    Optional<UUID> vehicleOf(UUID id);

    List<StoredDrive> findByVehicleId(UUID vehicleId);

    @Query("""
            select d from StoredDrive d
            where d.vehicleId = :vehicleId and (d.startAt < :at or (d.startAt = :at and d.id < :id))
            order by d.startAt desc, d.id desc""")
    List<StoredDrive> page(UUID vehicleId, Instant at, UUID id, Limit limit);
}
