package dev.stayfixed.simulator;

import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * What really happened in one driving cycle.
 *
 * @param number 1, 2, 3 ... in the order of time
 * @param clearedBefore codes were cleared or the battery was off between the cycle before and this one
 * @param codes by code, every code that the car watches
 * @param samples one a second
 */
public record CycleTruth(
        int number,
        Instant start,
        Instant end,
        boolean clearedBefore,
        Summary summary,
        Map<String, CodeTruth> codes,
        List<Sample> samples) {

    /**
     * One code in this cycle.
     *
     * @param ran its test reached a decision
     * @param failed at least one decision was a failure
     * @param similar the cycle met conditions similar to those last stored with the code, or the code does not ask for them
     * @param confirmed the code stood confirmed at the end of the drive and not at its start
     */
    public record CodeTruth(boolean ran, boolean failed, boolean similar, boolean confirmed) {

        /** A cycle in which monitoring occurred, in the sense of 13 CCR 1968.2 (d)(2.2.2). */
        public boolean monitored() {
            return failed || (ran && similar);
        }
    }

    public CycleTruth {
        codes = Map.copyOf(codes);
        samples = List.copyOf(samples);
    }

    public CodeTruth of(String code) {
        CodeTruth truth = codes.get(code);
        if (truth == null) {
            throw new IllegalArgumentException("this car does not watch " + code);
        }
        return truth;
    }
}
