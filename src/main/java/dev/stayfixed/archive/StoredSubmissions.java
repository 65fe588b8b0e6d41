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

    /** Drives that no row has at the revision of a submission, or a later one; asks indexes alone. */
    @Query("""
            select distinct s.driveId from StoredSubmission s
            where not exists (select 1 from StoredDrive d where d.id = s.driveId and d.revision >= s.revision)""")
    List<UUID> notOnFile();

    @Query("select distinct s.vehicleId from StoredSubmission s where s.driveId in :driveIds")
    List<UUID> vehiclesOf(List<UUID> driveIds);
}
