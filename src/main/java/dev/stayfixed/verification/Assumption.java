package dev.stayfixed.verification;

import java.util.List;
import java.util.stream.IntStream;

/**
 * What every verdict rests on beside the readings: how a control unit that obeys 13 CCR 1968.2 (d)(2.2) to (d)(2.5), SAE J1979 and ISO
 * 14229-1 keeps a code. They belong to the rule set and its version, and the report prints them.
 */
public enum Assumption {
    OWNER(
            "Only the control unit that owns a fault can deny it: the one seen to list it, else the one that watches its system. An answer"
                    + " that is missing, cut short, padded or doubtful leaves it unknown, and lists of emission-related codes do not speak of"
                    + " body, chassis or network codes that they were never seen to name."),
    DRIVING_CYCLE(
            "A trip needs an engine start. A failure in any part of a driving cycle makes it a failed trip. Records that the"
                    + " ignition cycle counter, the run time or a few seconds tie together are one cycle; where nothing tells, both are"
                    + " possible."),
    FAILING(
            "A failed trip stores the pending code at once. The second failed trip in a row confirms it at once, cycles without the"
                    + " monitor between them not counted; a one-trip fault is confirmed by the first. A unit may confirm sooner, never later."),
    PENDING(
            "A pending code is erased only by a passed trip: at the earliest when the monitor has passed in it, at the latest by the next"
                    + " start."),
    TRACES(
            "A failed trip that nothing shows keeps its pending code through the next passed trip, and does not fail and vanish between"
                    + " two readings."),
    LAMP(
            "The MIL is lit with the confirmed code and goes out after three passed trips in a row; passed trips from before the repair do"
                    + " not count towards them. A lamp that is on may be lit by another code."),
    CONFIRMED("A confirmed code stays while its lamp burns and for 40 warm-up cycles after."),
    PERMANENT(
            "A permanent code survives a clear and is erased only after a passed trip since then, or once the MIL went out by itself."),
    CLEAR(
            "A clear erases all but the permanent code, and the count begins anew. Nobody clears without a sign: said so, answered by the"
                    + " car, a counter since the clear that fell or grew less than the odometer, readiness or a status bit that fell back, a"
                    + " confirmed code gone with its lamp still due. A clear that the counters cannot have seen did not take."),
    CYCLE_READINESS(
            "PID $41 complete means that the fault's monitor ran to a decision in this cycle, not complete that it has not passed"
                    + " in it; it says nothing of circuits, of the very small leak, of components, nor of continuous monitors on spark"
                    + " engines."),
    STATUS_BYTE(
            "The status byte speaks of this very code. A code left out of a list asked for by mask has status 00 only on a unit that"
                    + " was seen to list an untested code that way."),
    NUMERATOR(
            "An in-use numerator grows by at most one a cycle and counts where it and the ignition cycle counter grew by one; one that"
                    + " several monitors share proves nothing."),
    TEST_RESULT(
            "A new service $06 result inside its limits means that the monitor ran, outside that it failed. Misfire counts of 0, and"
                    + " anything read before the engine was started, are no result."),
    NEXT_CYCLE(
            "PID $41, service $06 and the status of this cycle, read at key-on, say nothing of the drive before; the code lists do."),
    ANOTHER_CAR(
            "A record with another VIN, an odometer or ignition cycle counter that ran back, or counters that no unit can have brought"
                    + " so far is put aside.");

    private final String words;

    Assumption(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** "1. Only the control unit ...", in the order of the rule set. */
    static List<String> numbered() {
        List<Assumption> all = List.of(values());
        return IntStream.range(0, all.size())
                .mapToObj(at -> (at + 1) + ". " + all.get(at).words)
                .toList();
    }
}
