package dev.stayfixed.judging;

import dev.stayfixed.verification.bench.BenchProof;
import dev.stayfixed.verification.held.HeldSoFar;
import java.util.Optional;

/**
 * What stands beside the verdict on a fault, and never goes into it; both are of its latest repair.
 *
 * @param bench what was measured; empty before a repair is recorded
 * @param held how long it has held; empty likewise
 */
public record FaultProofs(Optional<BenchProof> bench, Optional<HeldSoFar> held) {

    /** Of a fault that nobody repaired yet. */
    public static final FaultProofs NONE = new FaultProofs(Optional.empty(), Optional.empty());
}
