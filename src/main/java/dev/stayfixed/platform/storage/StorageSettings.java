package dev.stayfixed.platform.storage;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Min;
import java.nio.file.Path;
import java.time.Duration;
import org.hibernate.validator.constraints.time.DurationMin;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.util.unit.DataSize;
import org.springframework.validation.annotation.Validated;

/**
 * Where copies of the database go, and where it comes from.
 *
 * @param keepFree space on a disk that a backup leaves free
 * @param moveFrom the H2 file whose rows are to be moved to this PostgreSQL at the start
 */
@Validated
@ConfigurationProperties("stayfixed")
record StorageSettings(
        DataSize keepFree, @Nullable String moveFrom, @Valid Backup backup) {

    /**
     * Copies of the running service.
     *
     * @param every how often one is made without being asked for; never, if missing
     * @param keep how many of those are kept, the newest
     */
    record Backup(
            Path folder,
            @Nullable @DurationMin(seconds = 1) Duration every,
            @Min(1) int keep) {}
}
