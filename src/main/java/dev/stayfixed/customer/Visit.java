package dev.stayfixed.customer;

import java.time.Instant;
import java.util.UUID;

/** What a token opens. */
public sealed interface Visit {

    /**
     * The page of one job.
     *
     * @param openedBefore by this link
     * @param closed the job: no drive is asked for any more, and the driver can still say that the lamp came back
     */
    record Welcome(UUID linkId, UUID jobId, Instant expiresAt, boolean openedBefore, boolean closed) implements Visit {}

    /** The link was good once. */
    record Ended(Reason reason) implements Visit {}

    /** No such link was ever made. */
    record Unknown() implements Visit {}

    /** Why a link ended. */
    enum Reason {
        REVOKED,
        EXPIRED
    }
}
