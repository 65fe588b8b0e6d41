package dev.stayfixed.jobs;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.EnablingCondition;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** The row of an enabling condition. */
@Embeddable
record StoredCondition(
        @Enumerated(EnumType.STRING) DriveQuantity quantity,
        @Column(name = "lower_limit") @Nullable Double lowerLimit,
        @Column(name = "upper_limit") @Nullable Double upperLimit) {

    static StoredCondition of(EnablingCondition condition) {
        return new StoredCondition(condition.quantity(), orNull(condition.min()), orNull(condition.max()));
    }

    EnablingCondition facts() {
        return new EnablingCondition(quantity, optional(lowerLimit), optional(upperLimit));
    }

    static @Nullable Double orNull(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }

    static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
