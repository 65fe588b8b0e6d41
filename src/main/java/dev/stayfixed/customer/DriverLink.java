package dev.stayfixed.customer;

import java.time.Instant;
import java.util.UUID;

/**
 * A link that was just made. The token is shown this once; only its digest is kept.
 *
 * @param token secret, in characters that need no escaping in an address
 * @param expiresAt when it ends by itself; revoking the link ends it earlier, renewing it later
 */
public record DriverLink(UUID jobId, String token, Instant issuedAt, Instant expiresAt) {}
