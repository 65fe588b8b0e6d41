package dev.stayfixed.intake;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface StoredLogMappings extends JpaRepository<StoredLogMapping, UUID> {

    Optional<StoredLogMapping> findByFingerprint(String fingerprint);

    @Query("select m from StoredLogMapping m order by m.name, m.id")
    List<StoredLogMapping> byName();
}
