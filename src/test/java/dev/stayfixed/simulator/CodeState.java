package dev.stayfixed.simulator;

import java.util.Optional;

/** What the engine computer remembers of one code, and the rules by which it does: 13 CCR 1968.2 (d)(2), ISO 14229-1 Annex D. */
final class CodeState {

    static final int PASSES_TO_MIL_OFF = 3;
    static final int WARM_UPS_TO_ERASE = 40;
    static final int CYCLES_WITHOUT_SIMILAR = 80;

    final MonitoredCode spec;
    private boolean pending;
    private boolean confirmed;
    private boolean commandsMil;
    private boolean permanent;
    private boolean testFailed;
    private boolean failedThisCycle;
    private boolean completedThisCycle;
    private boolean failedSinceClear;
    private boolean completedSinceClear;
    private boolean decidedSinceClear;
    private boolean pendingAtStart;
    private boolean similarThisCycle;
    private int cyclesSincePending;
    private int cleanCycles;
    private int warmUpsSinceMil;
    private boolean clearedWhilePermanent;
    private boolean passedSinceClear;
    private boolean minimumCycleSinceClear;
    private Optional<Sample> storedAt = Optional.empty();

    CodeState(MonitoredCode spec) {
        this.spec = spec;
    }

    /** Key on: bits 1 and 6 of the status byte start anew (ISO 14229-1 Annex D). */
    void operationCycleStarts() {
        failedThisCycle = false;
        completedThisCycle = false;
        similarThisCycle = false;
        pendingAtStart = pending;
    }

    void engineStarts() {
        if (pending) {
            cyclesSincePending++;
        }
    }

    void watch(Sample now) {
        similarThisCycle |= storedAt.map(now::isSimilarTo).orElse(true);
    }

    /** A result without the fault. It takes nothing back that a failure did in the same cycle. */
    void pass() {
        testFailed = false;
        completedThisCycle = true;
        completedSinceClear = true;
        decidedSinceClear |= !failedThisCycle;
    }

    /** A result with the fault: (d)(2.2.1) stores the pending code, (d)(2.2.2) confirms it on the next monitored failing cycle. */
    void fail(Sample now) {
        testFailed = true;
        completedThisCycle = true;
        completedSinceClear = true;
        failedSinceClear = true;
        if (failedThisCycle) {
            return;
        }
        failedThisCycle = true;
        cleanCycles = 0;
        warmUpsSinceMil = 0;
        passedSinceClear = false;
        minimumCycleSinceClear = false;
        boolean confirms = spec.trips() == 1 || (pendingAtStart && isSecondInARow());
        if (!pending) {
            pending = true;
            cyclesSincePending = 0;
            storedAt = Optional.of(now);
        }
        if (confirms) {
            confirmed = true;
            commandsMil = true;
            decidedSinceClear = true;
        }
    }

    /** (e)(6.4.2): a fuel-system or misfire fault confirms in the very next cycle, or in one with similar conditions. */
    private boolean isSecondInARow() {
        return !spec.similar() || cyclesSincePending == 1 || similarThisCycle;
    }

    /**
     * End of the driving cycle, where codes are erased.
     *
     * @param minimumCycle it met the 600/300/30 s conditions
     * @param warmUpWithoutMil it was a warm-up cycle and no code commanded the MIL in it
     */
    void cycleEnds(boolean minimumCycle, boolean warmUpWithoutMil) {
        boolean commandedMil = commandsMil;
        if (isClean()) {
            pending = false;
            countTowardsMilOff();
        } else if (forgottenWithoutSimilarConditions()) {
            pending = false;
        }
        age(warmUpWithoutMil);
        followPermanentCode(minimumCycle, commandedMil);
        if (!pending && !confirmed) {
            storedAt = Optional.empty();
        }
    }

    /** Monitored, and free of the fault at all times of the cycle. */
    private boolean isClean() {
        return completedThisCycle && !failedThisCycle && (!spec.similar() || similarThisCycle);
    }

    private boolean forgottenWithoutSimilarConditions() {
        return spec.similar() && !failedThisCycle && cyclesSincePending >= CYCLES_WITHOUT_SIMILAR;
    }

    private void countTowardsMilOff() {
        if (commandsMil && ++cleanCycles >= PASSES_TO_MIL_OFF) {
            commandsMil = false;
            permanent = false;
            cleanCycles = 0;
            warmUpsSinceMil = 0;
        }
    }

    private void age(boolean warmUpWithoutMil) {
        if (confirmed && !commandsMil && warmUpWithoutMil && !failedThisCycle) {
            warmUpsSinceMil++;
            if (warmUpsSinceMil >= WARM_UPS_TO_ERASE) {
                confirmed = false;
                pending = false;
            }
        }
    }

    private void followPermanentCode(boolean minimumCycle, boolean commandedMil) {
        if (commandsMil) {
            permanent = true;
            clearedWhilePermanent = false;
        } else if (permanent && clearedWhilePermanent && !commandedMil && !failedThisCycle) {
            passedSinceClear |= completedThisCycle;
            minimumCycleSinceClear |= minimumCycle;
            permanent = !(passedSinceClear && (spec.ratio() || minimumCycleSinceClear));
        }
    }

    /** Service $04, $14 or a lost battery: everything goes but the permanent code, (d)(2.5). */
    void clear() {
        pending = false;
        confirmed = false;
        commandsMil = false;
        testFailed = false;
        failedThisCycle = false;
        completedThisCycle = false;
        failedSinceClear = false;
        completedSinceClear = false;
        decidedSinceClear = false;
        pendingAtStart = false;
        similarThisCycle = false;
        cyclesSincePending = 0;
        cleanCycles = 0;
        warmUpsSinceMil = 0;
        passedSinceClear = false;
        minimumCycleSinceClear = false;
        storedAt = Optional.empty();
        clearedWhilePermanent = permanent;
    }

    /** The DTC status byte of ISO 14229-1 Annex D; all bits supported. */
    int statusByte() {
        return (testFailed ? 0x01 : 0)
                | (failedThisCycle ? 0x02 : 0)
                | (pending ? 0x04 : 0)
                | (confirmed ? 0x08 : 0)
                | (completedSinceClear ? 0 : 0x10)
                | (failedSinceClear ? 0x20 : 0)
                | (completedThisCycle ? 0 : 0x40)
                | (commandsMil ? 0x80 : 0);
    }

    boolean isPending() {
        return pending;
    }

    boolean isConfirmed() {
        return confirmed;
    }

    boolean commandsMil() {
        return commandsMil;
    }

    boolean isPermanent() {
        return permanent;
    }

    boolean completedThisCycle() {
        return completedThisCycle;
    }

    boolean failedThisCycle() {
        return failedThisCycle;
    }

    /** Readiness: passed once since the clear, or failed often enough to decide the MIL (SAE J1979 PID $01). */
    boolean decidedSinceClear() {
        return decidedSinceClear;
    }

    Optional<Sample> storedAt() {
        return storedAt;
    }
}
