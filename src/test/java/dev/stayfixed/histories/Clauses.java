package dev.stayfixed.histories;

import static dev.stayfixed.histories.Memory.*;

import java.util.ArrayList;
import java.util.List;

/**
 * What can happen next to a control unit's memory of one fault: every single event that the rules allow, each from its own clause.
 * Numbers are those of the assumptions of the rule set.
 */
final class Clauses {

    /** Takes an event and the memory after it. */
    interface Steps {
        void add(String event, long memory);
    }

    /** Whether a failure may store its pending code and lose it between two readings (assumption 5, read widely). */
    static final boolean MAY_VANISH = Boolean.getBoolean("stayfixed.histories.vanish");

    private final int trips;
    private final boolean permanentMatters;
    private final boolean sinceClearMatters;
    private final boolean hasNumerator;
    private final boolean hasResults;
    private boolean startsMatter;
    private boolean numeratorMatters;
    private boolean resultMatters;
    private boolean repaired;
    private boolean saidFixed;

    /** What the record never reads need not be told apart. */
    Clauses(CarRecord record) {
        this.trips = record.fault().trips();
        this.permanentMatters = record.lists(Answer.Listing.PERMANENT);
        this.sinceClearMatters = record.holds(Answer.Statuses.class)
                || (record.fault().bitProves() && record.holds(Answer.SinceClear.class));
        this.hasNumerator = record.fault().numerator() >= 0;
        this.hasResults = record.holds(Answer.TestValue.class);
    }

    void repaired() {
        repaired = true;
        saidFixed = false;
    }

    /** From now on starts, and runs of the monitor, are counted for the next reading of the counters. */
    void countersRead() {
        startsMatter = true;
        numeratorMatters = hasNumerator;
    }

    /** Likewise runs of the monitor, for the next reading of its result. */
    void resultKnown() {
        resultMatters = hasResults;
    }

    /** Assumption 14: a result read at key-on says nothing of the drives before it, so any run of theirs may show later. */
    long resultReadAtKeyOn(long m) {
        return resultMatters ? m : RESULT.set(m, 2);
    }

    boolean followsResults() {
        return resultMatters;
    }

    void saidFixed(boolean said) {
        saidFixed = said;
    }

    /** Every memory that a unit can have before anything is known of it. */
    List<Long> anything() {
        List<Long> all = new ArrayList<>();
        for (int trip = NOT_RUN; trip <= FAILED; trip++) {
            for (int bits = 0; bits < 1 << 7; bits++) {
                for (int lamp = OFF; lamp <= LIT + 2; lamp++) {
                    long m = TRIP.set(0, trip);
                    m = PENDING.set(m, bits & 1);
                    m = ROW.set(m, bits >> 1 & 1);
                    m = CONFIRMED.set(m, bits >> 2 & 1);
                    m = LAMP.set(m, lamp);
                    m = PERMANENT.set(m, permanentMatters ? bits >> 3 & 1 : 0);
                    m = PERMANENT_MAY_GO.set(m, permanentMatters ? bits >> 4 & 1 : 0);
                    m = COMPLETED_SINCE_CLEAR.set(m, sinceClearMatters ? bits >> 5 & 1 : 0);
                    m = FAILED_SINCE_CLEAR.set(m, sinceClearMatters ? bits >> 6 & 1 : 0);
                    if (isPossible(m)) {
                        all.add(m);
                    }
                }
            }
        }
        return all.stream().distinct().toList();
    }

    private static boolean isPossible(long m) {
        boolean pendingExplained = !PENDING.in(m) || ROW.in(m) || TRIP.of(m) == PASSED;
        boolean rowShown = !ROW.in(m) || (PENDING.in(m) && TRIP.of(m) != PASSED);
        boolean tripKnown = TRIP.of(m) != FAILED || ROW.in(m);
        boolean lampExplained = !LAMP.in(m) || CONFIRMED.in(m);
        boolean lampNotBeyond = !PENDING.in(m) || LAMP.of(m) <= LIT;
        boolean permanentKept = !LAMP.in(m) || !PERMANENT_MAY_GO.in(m);
        boolean failureCompleted = !FAILED_SINCE_CLEAR.in(m) || COMPLETED_SINCE_CLEAR.in(m);
        return pendingExplained
                && rowShown
                && tripKnown
                && lampExplained
                && lampNotBeyond
                && permanentKept
                && failureCompleted;
    }

    /** All single events that can come next, but for a clear. */
    void next(long m, Steps steps) {
        if (RUNNING.in(m)) {
            passes(steps, m);
            fails(steps, m);
            if (TRIP.of(m) == PASSED) {
                if (!TRACELESS.in(m)) {
                    erasePending(steps, m);
                }
                countTowardsLamp(steps, m);
            }
            steps.add("key off", keyOff(m));
        } else {
            if (TRIP.of(m) == PASSED) {
                erasePending(steps, m);
                countTowardsLamp(steps, m);
            }
            boolean vanishes = TRIP.of(m) == PASSED && GAP_PENDING.in(m);
            if (!vanishes) {
                steps.add("engine start", start(m));
            }
        }
        if (CONFIRMED.in(m) && !LAMP.in(m)) {
            steps.add("confirmed code aged out", CONFIRMED.set(m, 0));
        }
        if (PERMANENT.in(m) && PERMANENT_MAY_GO.in(m)) {
            steps.add("permanent code erased", PERMANENT.set(m, 0));
        }
    }

    /** Assumption 2: the monitor runs and passes; where it failed before in this cycle, the trip stays failed. */
    private void passes(Steps steps, long before) {
        if (SHOWN.of(before) != NOT_RUN && RESULT.in(before)) {
            return;
        }
        long m = decided(before, 1);
        if (SHOWN.of(m) == NOT_RUN) {
            m = SHOWN.set(m, PASSED);
        }
        if (TRIP.of(m) == NOT_RUN) {
            m = TRIP.set(m, PASSED);
            if (permanentMatters && !LAMP.in(m)) {
                m = PERMANENT_MAY_GO.set(m, 1);
            }
        }
        steps.add("monitor passes", m);
    }

    /** Assumption 3: pending at once, confirmed with the second failed trip in a row, or sooner, never later. */
    private void fails(Steps steps, long before) {
        if (SHOWN.of(before) == FAILED) {
            return;
        }
        long m = decided(before, 2);
        if (sinceClearMatters) {
            m = FAILED_SINCE_CLEAR.set(m, 1);
        }
        m = PERMANENT_MAY_GO.set(m, 0);
        m = PENDING.set(m, 1);
        m = GAP_PENDING.set(TRACELESS.set(m, 1), MAY_VANISH ? 0 : 1);
        m = TRIP.set(m, FAILED);
        m = SHOWN.set(m, FAILED);
        m = PASSES.set(m, 0);
        if (LAMP.in(m)) {
            m = LAMP.set(m, LIT);
        }
        if (repaired) {
            m = FAILS.set(m, Math.min(2, FAILS.of(m) + 1));
            m = FAILS.of(m) >= trips ? CONFIRMED_SINCE_REPAIR.set(m, 1) : m;
            m = saidFixed ? FAILED_LATER.set(m, 1) : m;
        }
        boolean mustConfirm = trips == 1 || ROW.in(m);
        if (!mustConfirm) {
            steps.add("monitor fails", m);
        }
        long confirmed = confirm(m);
        steps.add("monitor fails, unit confirms", confirmed);
        if (permanentMatters) {
            steps.add("monitor fails, unit confirms, permanent code", PERMANENT.set(confirmed, 1));
        }
    }

    /** Assumption 6: lit with the confirmed code. */
    private long confirm(long before) {
        long m = before;
        if (repaired && (!CONFIRMED.in(m) || !LAMP.in(m))) {
            m = CONFIRMED_SINCE_REPAIR.set(m, 1);
        }
        return LAMP.set(CONFIRMED.set(m, 1), LIT);
    }

    private long decided(long before, int result) {
        long m = before;
        if (sinceClearMatters) {
            m = COMPLETED_SINCE_CLEAR.set(m, 1);
        }
        if (numeratorMatters && TRIP.of(m) == NOT_RUN) {
            m = COUNTED.set(m, 1);
        }
        return resultMatters ? RESULT.set(m, Math.max(result, RESULT.of(m))) : m;
    }

    /** Assumption 4. */
    private static void erasePending(Steps steps, long m) {
        if (PENDING.in(m) && !GAP_PENDING.in(m)) {
            steps.add("pending code erased", withoutPending(m));
        }
    }

    private static long withoutPending(long m) {
        return GAP_PENDING.set(TRACELESS.set(PENDING.set(m, 0), 0), 0);
    }

    /** Assumption 6: out after three passed trips in a row. */
    private void countTowardsLamp(Steps steps, long m) {
        if (LAMP.in(m) && !LAMP_COUNTED.in(m)) {
            steps.add("pass counted towards the lamp", counted(m));
        }
    }

    private long counted(long before) {
        long m = LAMP_COUNTED.set(before, 1);
        if (LAMP.of(m) < LIT + 2) {
            return LAMP.set(m, LAMP.of(m) + 1);
        }
        return LAMP.set(permanentMatters ? PERMANENT_MAY_GO.set(m, 1) : m, OFF);
    }

    private long keyOff(long before) {
        long m = RUNNING.set(before, 0);
        if (repaired && TRIP.of(m) == PASSED) {
            m = PASSES.set(m, Math.min(trips, PASSES.of(m) + 1));
        }
        if (SHOWN.of(m) == PASSED) {
            m = ROW.set(FAILS.set(m, 0), 0);
        } else if (SHOWN.of(m) == FAILED) {
            m = ROW.set(m, 1);
        }
        return SHOWN.set(m, NOT_RUN);
    }

    /** A driving cycle begins; what the last one's pass erases is erased by now (assumption 4). */
    private long start(long before) {
        long m = before;
        if (TRIP.of(m) == PASSED) {
            m = withoutPending(m);
            m = LAMP.in(m) && !LAMP_COUNTED.in(m) ? counted(m) : m;
        }
        m = LAMP_COUNTED.set(TRIP.set(m, NOT_RUN), 0);
        m = GAP_STARTS.set(m, Math.min(2, GAP_STARTS.of(m) + 1));
        if (startsMatter) {
            m = STARTS.set(m, Math.min(MANY, STARTS.of(m) + 1));
        }
        return RUNNING.set(m, 1);
    }

    /** Assumption 9: all is erased but the permanent code; a failure earlier in this cycle keeps it a failed trip. */
    long clear(long before) {
        long m = withoutPending(before);
        m = SHOWN.set(m, NOT_RUN);
        m = TRIP.of(m) == FAILED && RUNNING.in(m) ? m : TRIP.set(m, NOT_RUN);
        m = ROW.set(CONFIRMED.set(LAMP.set(m, OFF), 0), 0);
        m = LAMP_COUNTED.set(PERMANENT_MAY_GO.set(m, 0), 0);
        m = COMPLETED_SINCE_CLEAR.set(FAILED_SINCE_CLEAR.set(m, 0), 0);
        m = RESULT.set(m, 0);
        return FAILS.set(PASSES.set(m, 0), 0);
    }

    /**
     * A repair is done with the key off; what passed before it counts for nothing (assumption 6), unless three trips have passed already
     * and the lamp only waits for the next start.
     */
    long repair(long before) {
        long m = RUNNING.in(before) ? keyOff(before) : before;
        boolean goesOut = LAMP.of(m) == LIT + 2 && TRIP.of(m) == PASSED && !LAMP_COUNTED.in(m);
        m = LAMP.in(m) && !goesOut ? LAMP.set(LAMP_COUNTED.set(m, 1), LIT) : m;
        m = FAILED_LATER.set(CONFIRMED_SINCE_REPAIR.set(m, 0), 0);
        return FAILS.set(PASSES.set(m, 0), 0);
    }
}
