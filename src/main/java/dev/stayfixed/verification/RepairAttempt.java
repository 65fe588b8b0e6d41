package dev.stayfixed.verification;

import dev.stayfixed.obd.Scan;
import java.time.Instant;
import java.util.Optional;

/**
 * One repair of a fault: the drives from {@code at} on, up to the next repair, are judged for it.
 *
 * @param codesCleared service $04 or $14 was sent with the repair
 * @param scanBefore read before the repair and before any clear
 * @param scanAfter read after the repair (and after the clear, if there was one)
 */
public record RepairAttempt(
        String id, Instant at, boolean codesCleared, Optional<Scan> scanBefore, Optional<Scan> scanAfter) {}
