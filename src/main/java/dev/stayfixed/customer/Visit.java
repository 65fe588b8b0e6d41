package dev.stayfixed.customer;

import java.time.Instant;
import java.util.UUID;

/** What a token opens. */
public sealed interface Visit {

    /** The page of one job. */
    record Welcome(UUID linkId, UUID jobId, Instant expiresAt) implements Visit {}

    /** The link was good once. */
    record Ended(Reason reason) implements Visit {}

    /** No such link was ever made. */
    record Unknown() implements Visit {}

    /** Why a link ended. */
    enum Reason {
        JOB_CLOSED("The workshop has closed this job. Nothing more is needed from you."),
        REVOKED("The workshop has withdrawn this link. Ask there for a new one."),
        EXPIRED("This link has run out. Ask the workshop for a new one.");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
