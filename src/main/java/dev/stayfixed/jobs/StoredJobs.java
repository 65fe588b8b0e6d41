package dev.stayfixed.jobs;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface StoredJobs extends JpaRepository<StoredJob, UUID> {

    @Query("select j.vehicle.id from StoredJob j where j.id = :id")
    Optional<UUID> vehicleOf(UUID id);

    @Query("select j from StoredJob j where j.vehicle.id = :vehicleId order by j.openedAt, j.id")
    List<StoredJob> ofVehicle(UUID vehicleId);
}
