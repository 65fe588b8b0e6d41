package dev.stayfixed.jobs;

import dev.stayfixed.verification.RepairedFault;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * One visit of a vehicle to the shop: its faults, what was done about them, and where each stands.
 *
 * @param version grows by one with every change, also when a drive moves a fault
 * @param scan pasted text with which the job was opened
 */
public record Job(
        UUID id,
        int version,
        UUID vehicleId,
        Labels labels,
        State state,
        Instant openedAt,
        Optional<Instant> closedAt,
        Optional<String> closeReason,
        List<Fault> faults,
        List<Repair> repairs,
        Optional<String> scan) {

    /** Whether the job takes changes. */
    public enum State {
        OPEN,
        CLOSED
    }

    /**
     * What the shop calls it.
     *
     * @param reference the shop's own number
     * @param complaint in the customer's words
     * @param customer whose vehicle it is; seen in the shop only
     */
    public record Labels(Optional<String> reference, Optional<String> complaint, Optional<String> customer) {}

    /**
     * What opens a job.
     *
     * @param faults may be empty where a scan is given: then they are taken from its codes
     */
    public record Opening(
            UUID vehicleId, Labels labels, Instant openedAt, Optional<String> scan, List<RepairedFault> faults) {}
}
