package dev.stayfixed.jobs;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** The row of one closing or reopening. */
@Embeddable
record StoredStateChange(
        Instant changedAt,
        @Enumerated(EnumType.STRING) Job.State state,
        @Nullable String reason) {}
