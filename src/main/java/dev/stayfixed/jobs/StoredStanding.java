package dev.stayfixed.jobs;

import dev.stayfixed.verification.StateName;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** The columns of a standing. */
@Embeddable
record StoredStanding(
        @Column(name = "standing_state") @Enumerated(EnumType.STRING)
        StateName state,

        @Column(name = "standing_passes") @Nullable Integer passes,
        @Column(name = "standing_decided") boolean decided,
        @Column(name = "standing_comeback") boolean comeback) {

    static StoredStanding of(Standing s) {
        return new StoredStanding(
                s.state(), s.passes().isPresent() ? s.passes().getAsInt() : null, s.decided(), s.comeback());
    }

    Standing facts(int needed) {
        return new Standing(
                state, passes == null ? OptionalInt.empty() : OptionalInt.of(passes), needed, decided, comeback);
    }
}
