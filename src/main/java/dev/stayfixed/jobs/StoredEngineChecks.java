package dev.stayfixed.jobs;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface StoredEngineChecks extends JpaRepository<StoredEngineCheck, UUID> {

    @Query("""
            select c from StoredEngineCheck c left join fetch c.runs
            where c.jobId in (select j.id from StoredJob j where j.vehicle.id = :vehicleId)
            order by c.statedAt, c.id""")
    List<StoredEngineCheck> ofVehicle(UUID vehicleId);

    Optional<StoredEngineCheck> findByIdAndJobId(UUID id, UUID jobId);

    int countByJobId(UUID jobId);
}
