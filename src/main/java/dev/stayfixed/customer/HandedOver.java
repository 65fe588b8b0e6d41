package dev.stayfixed.customer;

import java.time.Instant;
import java.util.Optional;

/**
 * A link of a job that still works, as the workshop sees it.
 *
 * @param openedAt when the driver's page was first opened by it
 * @param drives that came in through any link of the job
 */
public record HandedOver(Instant issuedAt, Instant expiresAt, Optional<Instant> openedAt, int drives) {}
