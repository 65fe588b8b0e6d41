package dev.stayfixed.jobs;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The row of one field of a repair that was put right. */
@Embeddable
record StoredRepairChange(
        Instant changedAt,
        @Nullable String changedBy,
        @Nullable String reason,
        @Enumerated(EnumType.STRING) Repair.Field field,
        @Column(name = "value_before") String before,
        @Column(name = "value_after") String after) {

    static StoredRepairChange of(Repair.Change change) {
        return new StoredRepairChange(
                change.at(),
                change.by().orElse(null),
                change.reason().orElse(null),
                change.field(),
                change.before(),
                change.after());
    }

    Repair.Change facts() {
        return new Repair.Change(
                changedAt, Optional.ofNullable(changedBy), Optional.ofNullable(reason), field, before, after);
    }
}
