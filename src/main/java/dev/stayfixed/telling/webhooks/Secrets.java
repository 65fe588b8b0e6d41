package dev.stayfixed.telling.webhooks;

import dev.stayfixed.platform.Secret;
import java.time.Instant;
import java.util.Base64;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What an endpoint's messages are signed with: "whsec_" and 24 random bytes in base 64, as the Standard Webhooks specification wants.
 *
 * @param previous also valid before {@code previousUntil}
 */
record Secrets(
        String present, @Nullable String previous, @Nullable Instant previousUntil) {

    static String make() {
        return "whsec_" + Base64.getEncoder().encodeToString(Secret.bytes(24));
    }

    Optional<String> previousAt(Instant now) {
        return Optional.ofNullable(previous).filter(p -> previousUntil != null && now.isBefore(previousUntil));
    }
}
