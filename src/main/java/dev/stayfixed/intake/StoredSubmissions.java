package dev.stayfixed.intake;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface StoredSubmissions extends JpaRepository<StoredSubmission, UUID> {

    Optional<StoredSubmission> findByDriveIdAndRevision(UUID driveId, int revision);

    @Query("""
            select s.driveId from StoredSubmission s
            where s.vehicleId = :vehicleId and s.digest = :digest
            order by s.receivedAt, s.driveId""")
    List<UUID> drivesWith(UUID vehicleId, String digest);

    /** What is judged: the latest submission of each drive. */
    @Query("""
            select s from StoredSubmission s
            where s.vehicleId = :vehicleId
              and s.revision = (select max(o.revision) from StoredSubmission o where o.driveId = s.driveId)""")
    List<StoredSubmission> latest(UUID vehicleId);
}
