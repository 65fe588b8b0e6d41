package dev.stayfixed.archive;

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

    /** The latest submission of each drive. */
    @Query("""
            select s from StoredSubmission s
            where s.vehicleId = :vehicleId
              and s.revision = (select max(o.revision) from StoredSubmission o where o.driveId = s.driveId)""")
    List<StoredSubmission> latest(UUID vehicleId);

    /** What is judged: the same, without the drives that a person left out. */
    @Query("""
            select s from StoredSubmission s
            where s.vehicleId = :vehicleId
              and s.revision = (select max(o.revision) from StoredSubmission o where o.driveId = s.driveId)
              and not exists (select 1 from StoredLeftOut l where l.driveId = s.driveId and l.takenInAt is null)""")
    List<StoredSubmission> judged(UUID vehicleId);
}
