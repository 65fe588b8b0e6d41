package dev.stayfixed.customer;

import java.time.Instant;
import java.util.UUID;

/** What a token opens. */
public sealed interface Visit {

    /**
     * The page of one job.
     *
     * @param openedBefore by this link
     */
    record Welcome(UUID linkId, UUID jobId, Instant expiresAt, boolean openedBefore) implements Visit {}

    /** The link was good once. */
    record Ended(Reason reason) implements Visit {}

    /** No such link was ever made. */
    record Unknown() implements Visit {}

    /** Why a link ended. */
    enum Reason {
        JOB_CLOSED,
        REVOKED,
        EXPIRED
    }
}
