package dev.stayfixed.simulator;

import java.util.Set;

/**
 * Knows every driving cycle of the car and applies the plain two-trip proof to it: the repair of a code is proven by enough
 * consecutive monitored cycles without the fault among the recorded drives; any monitored cycle with the fault, recorded or not,
 * breaks the run (13 CCR 1968.2 (d)(2.2)). Beside it stands the same run with the unrecorded cycles counted: the records may prove
 * some of those, by counters or by a lamp that went out, and never more.
 */
public final class PerfectObserver {

    /**
     * Where the repair stands.
     *
     * @param cleanRun consecutive recorded clean monitored cycles so far
     * @param proven the run was long enough, and no failure has followed
     * @param failedOnce the last monitored cycle failed, and it was the first in a row
     * @param back as many monitored cycles in a row failed as confirm the code, or it was confirmed
     * @param onceProven it had been proven at some time since the repair
     * @param wholeRun consecutive clean monitored cycles, recorded or not
     * @param onceTrue enough of those in a row had passed at some time since the repair: it was fixed, whoever can know
     */
    public record Proof(
            int cleanRun,
            boolean proven,
            boolean failedOnce,
            boolean back,
            boolean onceProven,
            int wholeRun,
            boolean onceTrue) {}

    private final String code;
    private final int trips;
    private final int needed;
    private int cleanRun;
    private boolean proven;
    private boolean failedLast;
    private boolean back;
    private boolean onceProven;
    private int wholeRun;
    private boolean trulyFixed;
    private boolean onceTrue;

    /**
     * Watches one code.
     *
     * @param trips failing monitored cycles in a row that bring it back, 1 or 2
     * @param needed consecutive clean monitored cycles
     */
    public PerfectObserver(String code, int trips, int needed) {
        this.code = code;
        this.trips = trips;
        this.needed = needed;
    }

    /** A new repair: all that came before is another story. */
    public void repaired() {
        cleanRun = 0;
        proven = false;
        failedLast = false;
        back = false;
        onceProven = false;
        wholeRun = 0;
        trulyFixed = false;
        onceTrue = false;
    }

    /** Every cycle of the car, in the order of time. */
    public void saw(CycleTruth cycle, boolean recorded) {
        if (cycle.clearedBefore() && !proven) {
            cleanRun = 0;
            failedLast = false;
        }
        if (cycle.clearedBefore() && !trulyFixed) {
            wholeRun = 0;
        }
        CycleTruth.CodeTruth truth = cycle.of(code);
        if (truth.failed()) {
            back |= trips == 1 || failedLast || truth.confirmed();
            failedLast = true;
            cleanRun = 0;
            proven = false;
            wholeRun = 0;
            trulyFixed = false;
        } else if (truth.monitored()) {
            failedLast = false;
            cleanRun += recorded ? 1 : 0;
            proven |= cleanRun >= needed;
            onceProven |= proven;
            wholeRun++;
            trulyFixed |= wholeRun >= needed;
            onceTrue |= trulyFixed;
        }
    }

    /** Cycles whose drives are not in the set were not recorded. */
    public void saw(Iterable<CycleTruth> cycles, Set<Integer> recorded) {
        cycles.forEach(cycle -> saw(cycle, recorded.contains(cycle.number())));
    }

    public Proof proof() {
        return new Proof(cleanRun, proven && !back, failedLast && !back, back, onceProven, wholeRun, onceTrue);
    }
}
