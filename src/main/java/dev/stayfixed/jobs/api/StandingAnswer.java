package dev.stayfixed.jobs.api;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.verification.StateName;
import org.jspecify.annotations.Nullable;

/**
 * Where a fault stands.
 *
 * @param passes consecutive clean trips so far
 * @param needed clean trips that prove the repair
 * @param decided confirmed fixed or recurred
 * @param comeback it had been confirmed fixed before
 */
public record StandingAnswer(
        StateName state, String words, @Nullable Integer passes, int needed, boolean decided, boolean comeback) {

    public static StandingAnswer of(Standing s) {
        return new StandingAnswer(
                s.state(),
                s.words(),
                s.passes().isPresent() ? s.passes().getAsInt() : null,
                s.needed(),
                s.decided(),
                s.comeback());
    }
}
