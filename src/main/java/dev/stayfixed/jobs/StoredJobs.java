package dev.stayfixed.jobs;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface StoredJobs extends JpaRepository<StoredJob, UUID> {

    @Query("select j.vehicle.id from StoredJob j where j.id = :id")
    Optional<UUID> vehicleOf(UUID id);

    @Query("select j from StoredJob j where j.vehicle.id = :vehicleId order by j.openedAt, j.id")
    List<StoredJob> ofVehicle(UUID vehicleId);

    @Query("""
            select j from StoredJob j
            where (j.openedAt < :at or (j.openedAt = :at and j.id < :id))
              and j.state in :states
              and (:like = '%%' or lower(j.reference) like :like escape '!' or lower(j.complaint) like :like escape '!'
                   or lower(j.customer) like :like escape '!'
                   or lower(j.vehicle.description) like :like escape '!' or lower(j.vehicle.plate) like :like escape '!'
                   or lower(j.vehicle.vin) like :like escape '!'
                   or exists (select f.id from StoredFault f where f.job = j and lower(f.code) like :like escape '!'))
            order by j.openedAt desc, j.id desc""")
    List<StoredJob> search(List<Job.State> states, String like, Instant at, UUID id, Limit limit);
}
