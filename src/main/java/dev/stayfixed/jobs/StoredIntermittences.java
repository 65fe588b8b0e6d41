package dev.stayfixed.jobs;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface StoredIntermittences extends JpaRepository<StoredIntermittence, UUID> {}
