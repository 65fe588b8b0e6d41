package dev.stayfixed.histories;

/**
 * What one control unit has in its memory of one fault, and what truly happened to it, at one moment of one history. It is packed into
 * a {@code long}, so that a set can hold many of them: each field reads and writes its own bits.
 */
final class Memory {

    /** Result of a driving cycle: {@link #TRIP} as it truly was, {@link #SHOWN} as the unit still knows it after a clear. */
    static final int NOT_RUN = 0;

    static final int PASSED = 1;
    static final int FAILED = 2;

    /** Value of {@link #LAMP}: not requested. Above it: on, with 0, 1 or 2 passed trips towards going out. */
    static final int OFF = 0;

    static final int LIT = 1;

    private static int next;

    /** The engine was started in this driving cycle; 0: between two cycles, a reading at key-on sees it so. */
    static final Field RUNNING = field(1);

    /** The present driving cycle; between two cycles the one that ended. */
    static final Field TRIP = field(2);

    static final Field SHOWN = field(2);
    static final Field PENDING = field(1);

    /** Nothing shows the failure that stored the pending code: it stays until the end of the next trip that passes (assumption 5). */
    static final Field TRACELESS = field(1);

    /** It was stored after the last reading. */
    static final Field GAP_PENDING = field(1);

    /** The unit's last trip before this cycle failed: the next failure is the second in a row. */
    static final Field ROW = field(1);

    static final Field CONFIRMED = field(1);
    static final Field LAMP = field(2);

    /** This cycle's pass was already counted towards the lamp. */
    static final Field LAMP_COUNTED = field(1);

    static final Field PERMANENT = field(1);

    /** A trip passed since the clear, or the lamp went out by itself: the permanent code may go (assumption 8). */
    static final Field PERMANENT_MAY_GO = field(1);

    static final Field COMPLETED_SINCE_CLEAR = field(1);
    static final Field FAILED_SINCE_CLEAR = field(1);

    /** Passed trips in a row since the repair or the clear, of cycles that ended; no more than needed. */
    static final Field PASSES = field(2);

    /** Failed trips in a row since the repair, no more than 2. */
    static final Field FAILS = field(2);

    static final Field CONFIRMED_SINCE_REPAIR = field(1);

    /** A trip failed since confirmed fixed was said. */
    static final Field FAILED_LATER = field(1);

    /** Engine starts since the ignition counter was last read; {@link #MANY} stands for as many or more. */
    static final Field STARTS = field(3);

    static final int MANY = 7;

    /** In a cycle after the numerator was last read the monitor ran to its first decision. */
    static final Field COUNTED = field(1);

    /** Since service $06 was last read: 0 no result, 1 some result, 2 a failed one among them. */
    static final Field RESULT = field(2);

    /** Only while a gap between two readings is explored: engine starts in it, 2 for two or more. */
    static final Field GAP_STARTS = field(2);

    /** Likewise: codes were cleared in it. */
    static final Field GAP_CLEARED = field(1);

    private Memory() {}

    private static Field field(int width) {
        Field field = new Field(next, (1L << width) - 1);
        next += width;
        return field;
    }

    /** Some bits of a memory. */
    record Field(int shift, long mask) {
        int of(long memory) {
            return (int) (memory >> shift & mask);
        }

        boolean in(long memory) {
            return of(memory) != 0;
        }

        long set(long memory, int value) {
            return (memory & ~(mask << shift)) | ((value & mask) << shift);
        }
    }

    /** Passed trips in a row up to this moment, the present cycle with them. */
    static int passesSoFar(long memory) {
        return PASSES.of(memory) + (RUNNING.in(memory) && TRIP.of(memory) == PASSED ? 1 : 0);
    }

    static String words(long memory) {
        String[] result = {"not run", "passed", "failed"};
        StringBuilder text = new StringBuilder(RUNNING.in(memory) ? "running, this cycle " : "key off, last cycle ");
        text.append(result[TRIP.of(memory)]);
        if (SHOWN.of(memory) != TRIP.of(memory)) {
            text.append(" (unit shows ").append(result[SHOWN.of(memory)]).append(')');
        }
        text.append(PENDING.in(memory) ? ", pending" : "")
                .append(CONFIRMED.in(memory) ? ", confirmed" : "")
                .append(LAMP.in(memory) ? ", lamp on after " + (LAMP.of(memory) - LIT) + " passes" : "")
                .append(PERMANENT.in(memory) ? ", permanent" : "")
                .append(", passes ")
                .append(passesSoFar(memory))
                .append(FAILS.in(memory) ? ", fails " + FAILS.of(memory) : "")
                .append(CONFIRMED_SINCE_REPAIR.in(memory) ? ", confirmed since the repair" : "");
        return text.toString();
    }
}
