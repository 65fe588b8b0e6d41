package dev.stayfixed.obd;

import java.util.Optional;

/**
 * The DTC status byte of ISO 14229-1 Annex D, already reduced to the bits that the control unit supports.
 *
 * @param value 0x00 to 0xFF
 * @param availability DTCStatusAvailabilityMask, 0x00 to 0xFF: a bit that is 0 here carries no meaning in {@code value}
 */
public record StatusByte(int value, int availability) {

    /** What the test of this code did in the present operation cycle. */
    public enum CycleResult {
        /** Completed and did not fail: value and 0x42 is 0. */
        PASSED,
        /** Failed at least once in this cycle, whatever came after. */
        FAILED,
        NOT_COMPLETED
    }

    private static final int FAILED_THIS_CYCLE = 0x02;
    private static final int NOT_COMPLETED_THIS_CYCLE = 0x40;
    private static final int BOTH = FAILED_THIS_CYCLE | NOT_COMPLETED_THIS_CYCLE;

    public StatusByte {
        Bytes.checkByte("status", value);
        Bytes.checkByte("status availability mask", availability);
        value &= availability;
    }

    /**
     * Empty when bits 1 and 6 contradict each other, or when the control unit does not support the bit that would tell: a pass needs
     * both bits, a failure bit 1 alone, a test not completed bit 6 alone.
     */
    public Optional<CycleResult> thisCycle() {
        if (isContradictory()) {
            return Optional.empty();
        }
        if ((value & FAILED_THIS_CYCLE) != 0) {
            return Optional.of(CycleResult.FAILED);
        }
        if ((value & NOT_COMPLETED_THIS_CYCLE) != 0) {
            return Optional.of(CycleResult.NOT_COMPLETED);
        }
        return (availability & BOTH) == BOTH ? Optional.of(CycleResult.PASSED) : Optional.empty();
    }

    /** Failed and not completed in the same cycle: a failure implies completion, so the record is wrong. */
    public boolean isContradictory() {
        return (value & BOTH) == BOTH;
    }

    /** Of two records of one code the one that speaks more against the repair: contradictory, failed, not completed, passed. */
    StatusByte worse(StatusByte other) {
        return other.gravity() > gravity() ? other : this;
    }

    private int gravity() {
        if (isContradictory()) {
            return 4;
        }
        return thisCycle()
                .map(result -> switch (result) {
                    case FAILED -> 3;
                    case NOT_COMPLETED -> 2;
                    case PASSED -> 0;
                })
                .orElse(1);
    }

    public boolean isPending() {
        return (value & 0x04) != 0;
    }

    public boolean isConfirmed() {
        return (value & 0x08) != 0;
    }

    public boolean failedSinceClear() {
        return (value & 0x20) != 0;
    }

    public boolean notCompletedSinceClear() {
        return (value & 0x10) != 0;
    }

    public boolean warningIndicatorRequested() {
        return (value & 0x80) != 0;
    }
}
