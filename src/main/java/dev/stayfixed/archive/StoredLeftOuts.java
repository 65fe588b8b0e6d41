package dev.stayfixed.archive;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface StoredLeftOuts extends JpaRepository<StoredLeftOut, UUID> {

    @Query("select l from StoredLeftOut l where l.driveId = :driveId and l.takenInAt is null")
    Optional<StoredLeftOut> ofDrive(UUID driveId);

    @Query("select l from StoredLeftOut l where l.vehicleId = :vehicleId and l.takenInAt is null")
    List<StoredLeftOut> ofVehicle(UUID vehicleId);
}
