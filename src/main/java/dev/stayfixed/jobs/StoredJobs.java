package dev.stayfixed.jobs;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface StoredJobs extends JpaRepository<StoredJob, UUID> {

    @Query("select j.vehicle.id from StoredJob j where j.id = :id")
    Optional<UUID> vehicleOf(UUID id);

    /** In plain SQL, as for each drive that comes in: queries that the shop is added to are translated anew each time. */
    @Query(value = """
            select * from job where vehicle_id = :vehicleId and shop_id = :#{@currentShop.id()}
            order by opened_at, id""", nativeQuery = true)
    List<StoredJob> ofVehicle(UUID vehicleId);
}
