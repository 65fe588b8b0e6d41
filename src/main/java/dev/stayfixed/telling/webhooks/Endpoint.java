package dev.stayfixed.telling.webhooks;

import dev.stayfixed.telling.EventKind;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * A receiver of webhooks.
 *
 * @param version grows by one with every change that somebody makes
 * @param active whether new events are sent to it
 * @param stoppedBecause why not, where it was not switched off by hand
 * @param quietUntil it asked for time, or failed just now; nothing is sent before
 * @param previousSecretUntil until then messages are signed with the secret before this one, too
 */
public record Endpoint(
        UUID id,
        int version,
        Details details,
        boolean active,
        Optional<String> stoppedBecause,
        Instant createdAt,
        int failuresInARow,
        Optional<Instant> quietUntil,
        Optional<Instant> previousSecretUntil) {

    /** What the shop says about it. */
    public record Details(String url, Optional<String> description, Set<EventKind> kinds) {}

    /** An endpoint and its secret, which is shown when it is made and never again. */
    public record WithSecret(Endpoint endpoint, String secret) {}
}
